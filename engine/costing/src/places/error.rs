//! Why legs can't be taken so: what was asked, what is there, and both readings where there are two.

use std::fmt;

use reeve_measure::Remedied;

/// Why legs can't be taken so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlaceError {
    /// There is no such row, or several and none is named.
    NoRow {
        /// The name asked for.
        named: Option<String>,
        /// Those there are.
        known: Vec<String>,
    },
    /// A part of a selection is not understood.
    NotPlaces {
        /// The part.
        part: String,
    },
    /// A place is too high.
    NoPlace {
        /// The place.
        place: usize,
        /// Legs in the row.
        legs: usize,
    },
    /// No leg is of a set.
    NoSet {
        /// The set.
        set: String,
    },
    /// The set is out of the row.
    OutOfRow {
        /// The set.
        set: String,
    },
    /// Neither knot nor step says how many legs one takes.
    EachNotSaid {
        /// Legs there are.
        legs: usize,
    },
    /// Fewer legs than one knot takes.
    TooFew {
        /// Legs there are.
        legs: usize,
        /// Legs that it takes.
        each: usize,
    },
    /// Legs are left over in a flat row.
    LeftOver {
        /// Legs there are.
        legs: usize,
        /// Legs in one knot.
        each: usize,
        /// Legs left over.
        left_over: usize,
    },
    /// A round does not close.
    RoundLeftOver {
        /// Legs there are.
        legs: usize,
        /// Legs in one knot.
        each: usize,
    },
    /// Half of an odd number of legs.
    OddHalf {
        /// Legs in one knot.
        each: usize,
    },
    /// Something of an edge is asked of a round.
    NoEdge {
        /// The key.
        asked: &'static str,
    },
    /// A shift in flat work.
    FlatShift {
        /// How far.
        shift: usize,
    },
    /// Edges move without rows that alternate.
    NotAlternate {
        /// The key.
        asked: &'static str,
    },
    /// Even rows would reach further out than odd ones.
    FarLeave {
        /// Legs left at an edge.
        leave: usize,
        /// Legs in one knot.
        each: usize,
    },
    /// A row would reach over the edge.
    OverEdge {
        /// The row, from 1.
        row: usize,
        /// Legs that are missing.
        wants: usize,
    },
    /// No row ever has so many knots.
    NeverSo {
        /// The knots asked for.
        knots: usize,
        /// Knots in the first row.
        first: usize,
    },
    /// A leader lies among its legs.
    Amid {
        /// Its place.
        leader: usize,
        /// Legs to its left.
        left: usize,
        /// Legs to its right.
        right: usize,
    },
    /// A set that should lead has several legs in the row.
    SeveralLead {
        /// The set.
        set: String,
        /// Legs of it.
        legs: usize,
    },
    /// A leader and its mirror want the same legs.
    MirrorOverlaps {
        /// The places.
        places: Vec<usize>,
    },
    /// There is no second cord for the mirror.
    NoMirrorLeader {
        /// The set.
        set: String,
    },
    /// Stretches that should cross don't lie beside one another.
    NotNeighbours {
        /// The places that should pass over.
        over: Vec<usize>,
        /// Those beneath.
        under: Vec<usize>,
    },
    /// A double row of an odd number of legs.
    OddDouble {
        /// Legs there are.
        legs: usize,
    },
    /// Something of a round is asked of another row.
    NotRound {
        /// The key.
        asked: &'static str,
    },
    /// Several sets, and no order.
    OrderNotSaid {
        /// The sets.
        sets: Vec<String>,
    },
    /// An order's part is not understood.
    NotADeal {
        /// The part.
        word: String,
    },
    /// An order does not come out over the row.
    OrderLeftOver {
        /// Legs there are.
        legs: usize,
        /// Legs in one round of the order.
        named: usize,
    },
    /// An order names more of a set than there are.
    OrderShort {
        /// The set.
        set: String,
        /// Legs named.
        named: usize,
        /// Legs there are.
        there: usize,
    },
    /// A knot's own order does not fit its legs.
    OrderOfKnot {
        /// Places it names.
        named: usize,
        /// Legs it takes.
        legs: usize,
    },
    /// New legs can't be dealt evenly.
    NotEven {
        /// New legs.
        legs: usize,
        /// Places for them.
        places: usize,
    },
}

impl fmt::Display for PlaceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoRow { named: Some(named), .. } => write!(f, "no row is called `{named}`"),
            Self::NoRow { .. } => write!(f, "there are several rows, and none is named"),
            Self::NotPlaces { part } => write!(f, "`{part}` is neither a place nor a set"),
            Self::NoPlace { place, legs } => write!(f, "the row has {legs} legs here; there is no {place}"),
            Self::NoSet { set } => write!(f, "no leg in the row is of the set `{set}`"),
            Self::OutOfRow { set } => write!(f, "`{set}` is out of the row and has no place"),
            Self::EachNotSaid { legs } => write!(f, "how many of the {legs} legs does one take?"),
            Self::TooFew { legs, each } => write!(f, "{each} legs are wanted, and {legs} are there"),
            Self::LeftOver { each, left_over, .. } => write!(f, "{each} legs a knot leave {left_over} over"),
            Self::RoundLeftOver { legs, each } => {
                let knots = legs / each;
                let (less, more) = (knots * each, (knots + 1) * each);
                write!(
                    f,
                    "the round of {legs} legs does not close: {knots} knots take {less}, {} take {more}",
                    knots + 1
                )
            }
            Self::OddHalf { each } => write!(f, "half of {each} legs is no whole number"),
            Self::NoEdge { asked } => write!(f, "a round has no edge: `{asked}` can't be"),
            Self::FlatShift { .. } => write!(f, "a flat row has an edge: it can't be shifted"),
            Self::NotAlternate { asked } => write!(f, "knots under one another have no half: `{asked}` can't be"),
            Self::FarLeave { .. } => write!(f, "even rows would reach further out than odd ones"),
            Self::OverEdge { row, wants } => write!(f, "row {row} wants {wants} legs beyond the edge"),
            Self::NeverSo { knots, first } => {
                write!(f, "no row ever has {knots} knots: the first has {first}")
            }
            Self::Amid { leader, .. } => write!(f, "the leader at {leader} lies among its legs"),
            Self::SeveralLead { set, legs } => write!(f, "{legs} legs of `{set}` are in the row, and one can lead"),
            Self::MirrorOverlaps { places } => {
                write!(f, "the leader's legs and their mirror both want {}", listed(places))
            }
            Self::NoMirrorLeader { set } => write!(f, "there is no second cord of `{set}` for the mirror"),
            Self::NotNeighbours { over, under } => {
                write!(f, "{} and {} don't lie beside one another", listed(over), listed(under))
            }
            Self::OddDouble { legs } => write!(f, "{legs} legs can't be laid front and back"),
            Self::NotRound { asked } => write!(f, "the row is not round: `{asked}` can't be"),
            Self::OrderNotSaid { sets } => write!(f, "how do the legs of {} lie?", sets.join(" and ")),
            Self::NotADeal { word } => write!(f, "`{word}` is not a number of legs and a set"),
            Self::OrderLeftOver { legs, named } => write!(f, "an order of {named} legs does not come out over {legs}"),
            Self::OrderShort { set, named, there } => {
                write!(f, "the order names {named} of `{set}`; there are {there}")
            }
            Self::OrderOfKnot { named, legs } => {
                write!(f, "the knot says how {named} legs lie after it, and takes {legs}")
            }
            Self::NotEven { legs, places } => write!(f, "{legs} new legs can't be dealt evenly to {places} places"),
        }
    }
}

impl std::error::Error for PlaceError {}

impl Remedied for PlaceError {
    fn remedy(&self) -> String {
        match self {
            Self::NoRow { known, .. } => format!("rows there are: {}", known.join(", ")),
            Self::NotPlaces { .. } => {
                "write places as \"1-4, 9-12\", or a set's name, which begins with a letter".to_owned()
            }
            Self::NoPlace { .. } => "places are counted anew when legs end or come in".to_owned(),
            Self::NoSet { .. } => "name a set that hangs here".to_owned(),
            Self::OutOfRow { .. } => "let it stay in the row first, or name other legs".to_owned(),
            Self::EachNotSaid { .. } => "say `each`: a number, or \"all\" for one of all".to_owned(),
            Self::TooFew { .. } => "take fewer a knot, or more legs".to_owned(),
            Self::LeftOver { left_over, .. } if left_over % 2 == 0 => {
                let half = left_over / 2;
                format!("leave {half} at each edge (`leave = {half}`), or {left_over} at one side")
            }
            Self::LeftOver { left_over, .. } => format!("leave {left_over} at one side, or add or end legs"),
            Self::RoundLeftOver { legs, each } => {
                let over = legs % each;
                format!("end {over} legs or add {}, or name the legs to be worked", each - over)
            }
            Self::OddHalf { .. } => "take an even number a knot, or write two steps".to_owned(),
            Self::NoEdge { .. } => "take it out, or name some of the legs".to_owned(),
            Self::FlatShift { shift } => format!("leave {shift} at the left instead"),
            Self::NotAlternate { .. } => "say `alternate = true`".to_owned(),
            Self::FarLeave { .. } => "name the legs of all rows, or leave fewer than one knot takes".to_owned(),
            Self::OverEdge { .. } => "work fewer rows, or begin with more legs at the edge".to_owned(),
            Self::NeverSo { .. } => "let an edge narrow or widen towards it".to_owned(),
            Self::Amid { left, right, .. } => {
                format!("name the {left} to its left or the {right} to its right")
            }
            Self::SeveralLead { .. } => "name its place".to_owned(),
            Self::MirrorOverlaps { .. } => "let each side end at the middle".to_owned(),
            Self::NoMirrorLeader { .. } => "hang two of them".to_owned(),
            Self::NotNeighbours { .. } => "name two stretches side by side".to_owned(),
            Self::OddDouble { .. } => "add or end a leg".to_owned(),
            Self::NotRound { .. } => "work it round first".to_owned(),
            Self::OrderNotSaid { sets } => match sets.as_slice() {
                [one, other] => format!(
                    "order = [\"{one}\", \"{other}\", \"{other}\", \"{one}\"] ({one} outside) or [\"{one}\", \"{other}\"] (turn about)"
                ),
                _ => "say `order`, from left to right".to_owned(),
            },
            Self::NotADeal { .. } => "for example \"worker\", or \"12 rust\"".to_owned(),
            Self::OrderLeftOver { .. } | Self::OrderShort { .. } => "name every leg of the row once".to_owned(),
            Self::OrderOfKnot { .. } => "say `each` as the knot's file does, or mend the file".to_owned(),
            Self::NotEven { .. } => "hang a whole number at each place".to_owned(),
        }
    }
}

/// Places with their neighbours together: `2-7, 9`.
fn listed(places: &[usize]) -> String {
    let mut places = places.to_vec();
    places.sort_unstable();
    let mut stretches: Vec<(usize, usize)> = Vec::new();
    for place in places {
        match stretches.last_mut() {
            Some((_, to)) if *to + 1 == place => *to = place,
            _ => stretches.push((place, place)),
        }
    }
    let word = |(from, to): (usize, usize)| if from == to { from.to_string() } else { format!("{from}-{to}") };
    stretches.into_iter().map(word).collect::<Vec<_>>().join(", ")
}
