//! The tables of the book, form by form. A form that was once released is never changed: a new one follows it.

/// Tells the book from other databases: the bytes of "reev".
pub(crate) const APPLICATION: i32 = 0x7265_6576;

/// What takes the book from each form to the next; the first makes it.
pub(crate) const FORMS: &[&str] = &[FIRST, SECOND, THIRD, FOURTH];

/// From this form on every row is sealed.
pub(crate) const SEALED_SINCE: i64 = 3;

/// The newest form.
pub(crate) fn newest() -> i64 {
    i64::try_from(FORMS.len()).unwrap_or(i64::MAX)
}

/// Commissions, quotes, what happened, payments.
const FIRST: &str = "
CREATE TABLE client (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    address TEXT NOT NULL,
    forgotten TEXT
) STRICT;
CREATE INDEX client_name ON client (name);

CREATE TABLE commission (
    id INTEGER PRIMARY KEY,
    reference TEXT NOT NULL,
    title TEXT NOT NULL,
    client INTEGER NOT NULL REFERENCES client (id),
    year INTEGER,
    running INTEGER,
    number TEXT UNIQUE,
    UNIQUE (year, running),
    CHECK ((year IS NULL) = (running IS NULL) AND (year IS NULL) = (number IS NULL))
) STRICT;
CREATE INDEX commission_reference ON commission (reference);

CREATE TABLE entry (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    revision INTEGER NOT NULL CHECK (revision >= 0),
    client INTEGER NOT NULL REFERENCES client (id),
    day TEXT NOT NULL,
    valid_until TEXT NOT NULL,
    figures TEXT NOT NULL,
    program TEXT NOT NULL,
    catalogue TEXT NOT NULL,
    changes TEXT NOT NULL,
    maker_changes TEXT NOT NULL,
    UNIQUE (commission, revision)
) STRICT;

CREATE TABLE page (
    entry INTEGER NOT NULL REFERENCES entry (id),
    name TEXT NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (entry, name)
) STRICT;

CREATE TABLE happening (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    state TEXT NOT NULL,
    day TEXT NOT NULL,
    note TEXT
) STRICT;
CREATE INDEX happening_commission ON happening (commission, id);

CREATE TABLE payment (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    day TEXT NOT NULL,
    amount TEXT NOT NULL,
    note TEXT
) STRICT;
CREATE INDEX payment_commission ON payment (commission);

CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER page_stays BEFORE UPDATE ON page BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER page_kept BEFORE DELETE ON page BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER happening_stays BEFORE UPDATE ON happening BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER happening_kept BEFORE DELETE ON happening BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER payment_stays BEFORE UPDATE ON payment BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER payment_kept BEFORE DELETE ON payment BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER number_stays BEFORE UPDATE OF year, running, number ON commission WHEN old.number IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a number is never given again'); END;
CREATE TRIGGER commission_kept BEFORE DELETE ON commission BEGIN SELECT RAISE(ABORT, 'a number is never given again'); END;
";

/// What it really took, and the timer.
const SECOND: &str = "
CREATE TABLE work (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    day TEXT NOT NULL,
    step TEXT,
    minutes REAL NOT NULL,
    note TEXT
) STRICT;
CREATE INDEX work_commission ON work (commission);

CREATE TABLE cord_used (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    day TEXT NOT NULL,
    cord TEXT NOT NULL,
    metres REAL NOT NULL
) STRICT;
CREATE INDEX cord_used_commission ON cord_used (commission);

CREATE TABLE bought (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    day TEXT NOT NULL,
    amount TEXT NOT NULL,
    what TEXT NOT NULL
) STRICT;
CREATE INDEX bought_commission ON bought (commission);

CREATE TABLE timer (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    commission INTEGER NOT NULL REFERENCES commission (id),
    step TEXT,
    started TEXT NOT NULL
) STRICT;
";

/// Seals, and entries that undo others.
const THIRD: &str = "
CREATE TABLE undoing (
    id INTEGER PRIMARY KEY,
    commission INTEGER NOT NULL REFERENCES commission (id),
    what TEXT NOT NULL,
    entry INTEGER NOT NULL,
    day TEXT NOT NULL,
    why TEXT NOT NULL,
    UNIQUE (what, entry)
) STRICT;
CREATE INDEX undoing_commission ON undoing (commission);

CREATE TABLE seal (
    nth INTEGER PRIMARY KEY,
    act TEXT NOT NULL,
    what TEXT NOT NULL,
    key TEXT NOT NULL,
    salt TEXT,
    digest TEXT,
    link TEXT NOT NULL
) STRICT;
CREATE INDEX seal_of ON seal (what, key);

CREATE TABLE sealed (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    count INTEGER NOT NULL,
    link TEXT NOT NULL
) STRICT;
INSERT INTO sealed (one, count, link) VALUES (1, 0, '');

CREATE TRIGGER work_stays BEFORE UPDATE ON work BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER work_kept BEFORE DELETE ON work BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER cord_used_stays BEFORE UPDATE ON cord_used BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER cord_used_kept BEFORE DELETE ON cord_used BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER bought_stays BEFORE UPDATE ON bought BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER bought_kept BEFORE DELETE ON bought BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER undoing_stays BEFORE UPDATE ON undoing BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER undoing_kept BEFORE DELETE ON undoing BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER client_kept BEFORE DELETE ON client BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER seal_stays BEFORE UPDATE OF nth, act, what, key, digest, link ON seal
BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER seal_wiped BEFORE UPDATE OF salt ON seal WHEN new.salt IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER seal_kept BEFORE DELETE ON seal BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
CREATE TRIGGER sealed_kept BEFORE DELETE ON sealed BEGIN SELECT RAISE(ABORT, 'what is entered is never edited'); END;
";

/// What is to be made, kept by the database itself from what happens, so that the queue is known without reading all that ever
/// happened. It follows from other tables: it is neither sealed nor written out, and [`crate::Book::check`] reckons it anew.
const FOURTH: &str = "
CREATE VIEW stands AS
SELECT commission.id AS commission, (
    SELECT state FROM happening WHERE happening.commission = commission.id
    AND NOT EXISTS (SELECT 1 FROM undoing WHERE what = 'happening' AND undoing.entry = happening.id)
    ORDER BY happening.id DESC LIMIT 1
) AS state FROM commission;

CREATE VIEW agreed AS SELECT commission FROM stands WHERE state IN ('accepted', 'on-bench');

CREATE TABLE to_be_made (
    commission INTEGER PRIMARY KEY REFERENCES commission (id)
) STRICT;
INSERT INTO to_be_made (commission) SELECT commission FROM agreed;

CREATE TRIGGER happening_moves AFTER INSERT ON happening BEGIN
    DELETE FROM to_be_made WHERE commission = new.commission;
    INSERT INTO to_be_made (commission) SELECT commission FROM agreed WHERE commission = new.commission;
END;
CREATE TRIGGER undoing_moves AFTER INSERT ON undoing WHEN new.what = 'happening' BEGIN
    DELETE FROM to_be_made WHERE commission = new.commission;
    INSERT INTO to_be_made (commission) SELECT commission FROM agreed WHERE commission = new.commission;
END;
";
