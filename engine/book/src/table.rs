//! The tables of the book: what each column holds, and what tells the rows of a table apart.

use rusqlite::types::ValueRef;

use crate::act::ACTS;
use crate::kind::ColumnKind;

/// A table.
#[derive(Debug)]
pub(crate) struct BookTable {
    pub(crate) name: &'static str,
    pub(crate) columns: &'static [TableColumn],
    /// How many of the first columns tell its rows apart.
    keys: usize,
}

/// A column.
#[derive(Debug)]
pub(crate) struct TableColumn {
    pub(crate) name: &'static str,
    kind: ColumnKind,
    /// Whether it can hold nothing.
    optional: bool,
}

const fn of(name: &'static str, kind: ColumnKind) -> TableColumn {
    TableColumn { name, kind, optional: false }
}

const fn maybe(name: &'static str, kind: ColumnKind) -> TableColumn {
    TableColumn { name, kind, optional: true }
}

/// The tables that are sealed, those that others refer to first.
pub(crate) const TABLES: &[BookTable] = &[
    BookTable {
        name: "client",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("name", ColumnKind::Text),
            of("address", ColumnKind::Lines),
            maybe("forgotten", ColumnKind::Day),
        ],
    },
    BookTable {
        name: "commission",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("reference", ColumnKind::Name),
            of("title", ColumnKind::Text),
            of("client", ColumnKind::Id),
            maybe("year", ColumnKind::Year),
            maybe("running", ColumnKind::Id),
            maybe("number", ColumnKind::Name),
        ],
    },
    BookTable {
        name: "entry",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("revision", ColumnKind::Count),
            of("client", ColumnKind::Id),
            of("day", ColumnKind::Day),
            of("valid_until", ColumnKind::Day),
            of("figures", ColumnKind::Figures),
            of("program", ColumnKind::Text),
            of("catalogue", ColumnKind::Text),
            of("changes", ColumnKind::Lines),
            of("maker_changes", ColumnKind::Lines),
        ],
    },
    BookTable {
        name: "page",
        keys: 2,
        columns: &[of("entry", ColumnKind::Id), of("name", ColumnKind::Name), of("text", ColumnKind::Text)],
    },
    BookTable {
        name: "happening",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("state", ColumnKind::State),
            of("day", ColumnKind::Day),
            maybe("note", ColumnKind::Text),
        ],
    },
    BookTable {
        name: "payment",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("day", ColumnKind::Day),
            of("amount", ColumnKind::Money),
            maybe("note", ColumnKind::Text),
        ],
    },
    BookTable {
        name: "work",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("day", ColumnKind::Day),
            maybe("step", ColumnKind::Text),
            of("minutes", ColumnKind::Minutes),
            maybe("note", ColumnKind::Text),
        ],
    },
    BookTable {
        name: "cord_used",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("day", ColumnKind::Day),
            of("cord", ColumnKind::Text),
            of("metres", ColumnKind::Metres),
        ],
    },
    BookTable {
        name: "bought",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("day", ColumnKind::Day),
            of("amount", ColumnKind::Money),
            of("what", ColumnKind::Text),
        ],
    },
    BookTable {
        name: "timer",
        keys: 1,
        columns: &[
            of("one", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            maybe("step", ColumnKind::Text),
            of("started", ColumnKind::Moment),
        ],
    },
    BookTable {
        name: "undoing",
        keys: 1,
        columns: &[
            of("id", ColumnKind::Id),
            of("commission", ColumnKind::Id),
            of("what", ColumnKind::Word(UNDONE)),
            of("entry", ColumnKind::Id),
            of("day", ColumnKind::Day),
            of("why", ColumnKind::Text),
        ],
    },
];

/// Tables whose rows can be undone.
pub(crate) const UNDONE: &[&str] = &["happening", "payment", "work", "cord_used", "bought"];

/// The seals themselves, as they are written out.
pub(crate) const SEALS: BookTable = BookTable {
    name: "seal",
    keys: 1,
    columns: &[
        of("nth", ColumnKind::Id),
        of("act", ColumnKind::Word(ACTS)),
        of("what", ColumnKind::Name),
        of("key", ColumnKind::Name),
        maybe("salt", ColumnKind::Hex(32)),
        maybe("digest", ColumnKind::Hex(64)),
        of("link", ColumnKind::Hex(64)),
    ],
};

/// A table by its name.
pub(crate) fn table(name: &str) -> Option<&'static BookTable> {
    TABLES.iter().find(|table| table.name == name)
}

/// Rows of a table that were not undone, in place of the table itself.
pub(crate) fn standing(table: &str) -> String {
    format!(
        "(SELECT * FROM {table} WHERE NOT EXISTS \
         (SELECT 1 FROM undoing WHERE what = '{table}' AND undoing.entry = {table}.id))"
    )
}

impl BookTable {
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

impl TableColumn {
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
