//! The tables of the book: what each column holds, and what tells the rows of a table apart.

use rusqlite::types::ValueRef;

use crate::kind::Kind;
use crate::seal::ACTS;

/// A table.
#[derive(Debug)]
pub(crate) struct Table {
    pub(crate) name: &'static str,
    pub(crate) columns: &'static [Column],
    /// How many of the first columns tell its rows apart.
    keys: usize,
}

/// A column.
#[derive(Debug)]
pub(crate) struct Column {
    pub(crate) name: &'static str,
    kind: Kind,
    /// Whether it can hold nothing.
    optional: bool,
}

const fn of(name: &'static str, kind: Kind) -> Column {
    Column { name, kind, optional: false }
}

const fn maybe(name: &'static str, kind: Kind) -> Column {
    Column { name, kind, optional: true }
}

/// The tables that are sealed, those that others refer to first.
pub(crate) const TABLES: &[Table] = &[
    Table {
        name: "client",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("name", Kind::Text),
            of("address", Kind::Lines),
            maybe("forgotten", Kind::Day),
        ],
    },
    Table {
        name: "commission",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("reference", Kind::Name),
            of("title", Kind::Text),
            of("client", Kind::Id),
            maybe("year", Kind::Year),
            maybe("running", Kind::Id),
            maybe("number", Kind::Name),
        ],
    },
    Table {
        name: "entry",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("revision", Kind::Count),
            of("client", Kind::Id),
            of("day", Kind::Day),
            of("valid_until", Kind::Day),
            of("figures", Kind::Figures),
            of("program", Kind::Text),
            of("catalogue", Kind::Text),
            of("changes", Kind::Lines),
            of("maker_changes", Kind::Lines),
        ],
    },
    Table { name: "page", keys: 2, columns: &[of("entry", Kind::Id), of("name", Kind::Name), of("text", Kind::Text)] },
    Table {
        name: "happening",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("state", Kind::State),
            of("day", Kind::Day),
            maybe("note", Kind::Text),
        ],
    },
    Table {
        name: "payment",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("day", Kind::Day),
            of("amount", Kind::Money),
            maybe("note", Kind::Text),
        ],
    },
    Table {
        name: "work",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("day", Kind::Day),
            maybe("step", Kind::Text),
            of("minutes", Kind::Minutes),
            maybe("note", Kind::Text),
        ],
    },
    Table {
        name: "cord_used",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("day", Kind::Day),
            of("cord", Kind::Text),
            of("metres", Kind::Metres),
        ],
    },
    Table {
        name: "bought",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("day", Kind::Day),
            of("amount", Kind::Money),
            of("what", Kind::Text),
        ],
    },
    Table {
        name: "timer",
        keys: 1,
        columns: &[
            of("one", Kind::Id),
            of("commission", Kind::Id),
            maybe("step", Kind::Text),
            of("started", Kind::Moment),
        ],
    },
    Table {
        name: "undoing",
        keys: 1,
        columns: &[
            of("id", Kind::Id),
            of("commission", Kind::Id),
            of("what", Kind::Word(UNDONE)),
            of("entry", Kind::Id),
            of("day", Kind::Day),
            of("why", Kind::Text),
        ],
    },
];

/// Tables whose rows can be undone.
pub(crate) const UNDONE: &[&str] = &["happening", "payment", "work", "cord_used", "bought"];

/// The seals themselves, as they are written out.
pub(crate) const SEALS: Table = Table {
    name: "seal",
    keys: 1,
    columns: &[
        of("nth", Kind::Id),
        of("act", Kind::Word(ACTS)),
        of("what", Kind::Name),
        of("key", Kind::Name),
        maybe("salt", Kind::Hex(32)),
        maybe("digest", Kind::Hex(64)),
        of("link", Kind::Hex(64)),
    ],
};

/// A table by its name.
pub(crate) fn table(name: &str) -> Option<&'static Table> {
    TABLES.iter().find(|table| table.name == name)
}

/// Rows of a table that were not undone, in place of the table itself.
pub(crate) fn standing(table: &str) -> String {
    format!("(SELECT * FROM {table} WHERE id NOT IN (SELECT entry FROM undoing WHERE what = '{table}'))")
}

impl Table {
    /// Its columns' names, with commas.
    pub(crate) fn names(&self) -> String {
        self.columns.iter().map(|column| column.name).collect::<Vec<_>>().join(", ")
    }

    /// Asks for all its rows, in order.
    pub(crate) fn all(&self) -> String {
        let keys: Vec<&str> = self.columns.iter().take(self.keys).map(|column| column.name).collect();
        format!("SELECT {} FROM {} ORDER BY {}", self.names(), self.name, keys.join(", "))
    }

    /// What holds of the row of a key, `?1`, and of no other.
    pub(crate) fn of_key(&self) -> String {
        let keys: Vec<&str> = self.columns.iter().take(self.keys).map(|column| column.name).collect();
        // Nothing stands before the first stroke of a key but a number.
        match keys.as_slice() {
            [first, second] => format!(
                "{first} = CAST(substr(?1, 1, instr(?1, '/') - 1) AS INTEGER) AND {second} = substr(?1, instr(?1, '/') + 1)"
            ),
            _ => format!("{} = CAST(?1 AS INTEGER)", keys.concat()),
        }
    }

    /// Asks for one row, by its key.
    pub(crate) fn one(&self) -> String {
        format!("SELECT {} FROM {} WHERE {}", self.names(), self.name, self.of_key())
    }

    /// What tells a row from others: `4`, `4/quote.html`.
    pub(crate) fn key<'a>(&self, value: impl Fn(usize) -> ValueRef<'a>) -> String {
        let word = |at: usize| match value(at) {
            ValueRef::Integer(number) => number.to_string(),
            ValueRef::Text(text) => String::from_utf8_lossy(text).into_owned(),
            _ => String::new(),
        };
        (0..self.keys).map(word).collect::<Vec<_>>().join("/")
    }
}

impl Column {
    /// Says what is wrong with a value.
    pub(crate) fn judge(&self, value: ValueRef<'_>) -> Result<(), String> {
        match value {
            ValueRef::Null if self.optional => Ok(()),
            ValueRef::Null => Err(format!("{}: it is missing", self.name)),
            value => self.kind.judge(value).map_err(|why| format!("{}: {why}", self.name)),
        }
    }

    /// Whether it holds a number that may have decimals.
    pub(crate) fn is_real(&self) -> bool {
        self.kind.is_real()
    }
}
