//! Worked tables of places: gone through by hand, step by step.

use std::collections::BTreeMap;

use proptest::prelude::*;
use reeve_measure::Remedied;

use super::*;

/// Cords of one set, folded.
fn folded(set: &str, count: usize) -> HungCord {
    HungCord { sets: vec![set.to_owned(), set.to_owned()], count }
}

fn single(set: &str, count: usize) -> HungCord {
    HungCord { sets: vec![set.to_owned()], count }
}

fn order(words: &[&str]) -> Vec<Deal> {
    words.iter().map(|word| Deal::of_word(word).unwrap()).collect()
}

fn at(word: &str) -> Selection {
    Selection::of_word(word).unwrap()
}

fn knot(takes: usize, ties: Ties, after: After) -> KnotPlaces {
    KnotPlaces { takes: Some(takes), ties, after }
}

fn square() -> KnotPlaces {
    knot(4, Ties::Outer, After::Keeps)
}

fn half() -> KnotPlaces {
    knot(4, Ties::Outer, After::Swaps)
}

fn rows(count: u32) -> KnotRows {
    KnotRows { alternate: true, rows: RowsAsked::Count(count), ..KnotRows::default() }
}

fn by_place(leader: usize, legs: &str) -> Leading {
    Leading { leader: Selected::Places(leader, leader), legs: at(legs), ..Leading::default() }
}

fn by_set(leader: &str, legs: &str) -> Leading {
    Leading { leader: Selected::Set(leader.to_owned()), legs: at(legs), ..Leading::default() }
}

impl LegOrder {
    fn word(&self, leg: LegId) -> String {
        let LegName { set, number } = self.name(leg);
        format!("{set}{number}")
    }

    fn words(&self, legs: &[LegId]) -> String {
        legs.iter().map(|leg| self.word(*leg)).collect::<Vec<_>>().join(" ")
    }

    /// The only row, as it lies.
    fn lies(&self) -> String {
        self.words(&self.row(None).unwrap().legs)
    }

    /// What ties round what: `v1 v4 : v2 v3; …`.
    fn tied(&self, knots: &[PlacedKnot]) -> String {
        let one = |knot: &PlacedKnot| format!("{} : {}", self.words(&knot.ties), self.words(&knot.core));
        knots.iter().map(one).collect::<Vec<_>>().join("; ")
    }

    /// Leader, way and legs: `a1 > a2 a3`.
    fn crossed(&self, crossing: &Crossing) -> String {
        let way = if crossing.goes_right { '>' } else { '<' };
        format!("{} {way} {}", self.word(crossing.leader), self.words(&crossing.over))
    }

    /// Leads, and says the crossings.
    fn led(&mut self, leading: &Leading) -> Vec<String> {
        let crossings = self.lead(None, leading).unwrap();
        crossings.iter().map(|crossing| self.crossed(crossing)).collect()
    }
}

/// A row of so many legs of one set, `a`.
fn row_of(legs: usize) -> LegOrder {
    let mut work = LegOrder::default();
    work.hang(None, &[single("a", legs)], &[], &NewLegs::AtRight).unwrap();
    work
}

fn places(knots: &[PlacedKnot]) -> String {
    let one = |knot: &PlacedKnot| knot.places.iter().map(usize::to_string).collect::<Vec<_>>().join(" ");
    knots.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// How often each leg ties and is tied round.
#[derive(Default)]
struct Counted(BTreeMap<LegId, (usize, usize)>);

impl Counted {
    fn add(&mut self, knots: &[PlacedKnot], times: usize) {
        for knot in knots {
            knot.ties.iter().for_each(|leg| self.0.entry(*leg).or_default().0 += times);
            knot.core.iter().for_each(|leg| self.0.entry(*leg).or_default().1 += times);
        }
    }

    fn words(&self) -> String {
        self.0.values().map(|(ties, core)| format!("{ties}/{core}")).collect::<Vec<_>>().join(" ")
    }
}

#[test]
fn a_v_under_a_double_border() {
    let mut work = LegOrder::default();
    work.hang(None, &[folded("a", 8)], &[], &NewLegs::AtRight).unwrap();
    let field = KnotRows { narrow: MovingEdges::Both, rows: RowsAsked::Until(1), ..rows(1) };
    let tied = work.tie(None, &Selection::All, &field, &square()).unwrap();
    let found: Vec<String> = tied.iter().map(|row| places(row)).collect();
    assert_eq!(
        found,
        [
            "1 2 3 4, 5 6 7 8, 9 10 11 12, 13 14 15 16",
            "3 4 5 6, 7 8 9 10, 11 12 13 14",
            "5 6 7 8, 9 10 11 12",
            "7 8 9 10",
        ]
    );
    let mut counted = Counted::default();
    for row in &tied {
        counted.add(row, 1);
    }
    assert_eq!(counted.words(), "1/0 0/1 1/1 1/1 2/1 1/2 2/2 2/2 2/2 2/2 1/2 2/1 1/1 1/1 0/1 1/0");
    let mut crossings = Vec::new();
    for _ in 0..2 {
        crossings.extend(work.led(&Leading { mirror: Mirror::Also, ..by_place(1, "2-8") }));
        crossings.push(work.lies());
        crossings.extend(work.led(&by_place(8, "9")));
        crossings.push(work.lies());
    }
    assert_eq!(
        crossings,
        [
            "a1 > a2 a3 a4 a5 a6 a7 a8",
            "a16 < a15 a14 a13 a12 a11 a10 a9",
            "a2 a3 a4 a5 a6 a7 a8 a1 a16 a9 a10 a11 a12 a13 a14 a15",
            "a1 > a16",
            "a2 a3 a4 a5 a6 a7 a8 a16 a1 a9 a10 a11 a12 a13 a14 a15",
            "a2 > a3 a4 a5 a6 a7 a8 a16",
            "a15 < a14 a13 a12 a11 a10 a9 a1",
            "a3 a4 a5 a6 a7 a8 a16 a2 a15 a1 a9 a10 a11 a12 a13 a14",
            "a2 > a15",
            "a3 a4 a5 a6 a7 a8 a16 a15 a2 a1 a9 a10 a11 a12 a13 a14",
        ]
    );
}

#[test]
fn a_hanger_of_four_arms() {
    let hung = |half_knots: u32| {
        let mut work = LegOrder::default();
        let arms = HungCord { sets: vec!["w".to_owned(), "f".to_owned()], count: 8 };
        work.hang(None, &[arms], &order(&["w", "f", "f", "w"]), &NewLegs::AtRight).unwrap();
        work.work(None, Worked::Round).unwrap();
        assert_eq!(work.lies(), "w1 f1 f2 w2 w3 f3 f4 w4 w5 f5 f6 w6 w7 f7 f8 w8");
        let mut counted = Counted::default();
        let b2 = work.tie(None, &Selection::All, &KnotRows { times: 3, ..KnotRows::default() }, &square()).unwrap();
        counted.add(&b2[0], 3);
        assert_eq!(work.tied(&b2[0]), "w1 w2 : f1 f2; w3 w4 : f3 f4; w5 w6 : f5 f6; w7 w8 : f7 f8");
        work.tie(None, &Selection::All, &KnotRows { times: half_knots, ..KnotRows::default() }, &half()).unwrap();
        (work, counted)
    };
    let shifted = KnotRows { shift: 2, ..KnotRows::default() };
    let (mut even, _) = hung(6);
    let b4 = even.tie(None, &Selection::All, &shifted, &square()).unwrap();
    assert_eq!(even.tied(&b4[0]), "f2 f3 : w2 w3; f4 f5 : w4 w5; f6 f7 : w6 w7; f8 f1 : w8 w1");
    let (mut work, mut counted) = hung(5);
    let after = "w2 f1 f2 w1 w4 f3 f4 w3 w6 f5 f6 w5 w8 f7 f8 w7";
    assert_eq!(work.lies(), after);
    let net = "f2 f3 : w1 w4; f4 f5 : w3 w6; f6 f7 : w5 w8; f8 f1 : w7 w2";
    let straight = "w2 w1 : f1 f2; w4 w3 : f3 f4; w6 w5 : f5 f6; w8 w7 : f7 f8";
    for (field, told) in
        [(&shifted, vec![net]), (&KnotRows::default(), vec![straight]), (&rows(3), vec![straight, net, straight])]
    {
        let tied = work.tie(None, &Selection::All, field, &square()).unwrap();
        let found: Vec<String> = tied.iter().map(|row| work.tied(row)).collect();
        assert_eq!(found, told);
        for row in &tied {
            counted.add(row, 1);
        }
    }
    // Legs are counted as they were named: w, f, w, f, …
    assert_eq!(counted.words(), ["6/2 2/6"; 8].join(" "));
    work.hang(None, &[single("x", 1)], &[], &NewLegs::Out).unwrap();
    let x = work.out()[0].leg;
    let wrap = KnotPlaces { takes: None, ties: Ties::Own(x), after: After::Keeps };
    let all = KnotRows { each: Some(16), ..KnotRows::default() };
    let b7 = work.tie(None, &Selection::All, &all, &wrap).unwrap();
    assert_eq!(work.tied(&b7[0]), format!("x1 : {after}"));
    assert_eq!((work.end(None, &Selection::All).unwrap().len(), work.end(None, &at("x")).unwrap()), (16, vec![x]));
    assert!(work.row(None).unwrap().legs.is_empty() && work.out().is_empty());
}

#[test]
fn hitch_rows_with_leaders_that_change_and_come_back() {
    let mut work = LegOrder::default();
    work.hang(None, &[folded("r", 2), folded("s", 2)], &order(&["4 r", "4 s"]), &NewLegs::AtRight).unwrap();
    assert_eq!(work.lies(), "r1 r2 r3 r4 s1 s2 s3 s4");
    work.hang(None, &[single("top", 1)], &[], &NewLegs::Out).unwrap();
    let c2 = work.led(&Leading { leader: Selected::Set("top".to_owned()), rows: 2, ..Leading::default() });
    assert_eq!(c2, ["top1 > r1 r2 r3 r4 s1 s2 s3 s4", "top1 < s4 s3 s2 s1 r4 r3 r2 r1"]);
    assert_eq!(work.lies(), "r1 r2 r3 r4 s1 s2 s3 s4");
    let mut there_and_back = work.clone();
    let back = there_and_back.led(&Leading { rows: 2, ..by_place(1, "2-8") });
    assert_eq!(back, ["r1 > r2 r3 r4 s1 s2 s3 s4", "r1 < s4 s3 s2 s1 r4 r3 r2"]);
    assert_eq!(there_and_back.lies(), "r1 r2 r3 r4 s1 s2 s3 s4");
    let mut c3 = Vec::new();
    for _ in 0..3 {
        c3.extend(work.led(&by_place(1, "2-8")));
    }
    assert_eq!(c3, ["r1 > r2 r3 r4 s1 s2 s3 s4", "r2 > r3 r4 s1 s2 s3 s4 r1", "r3 > r4 s1 s2 s3 s4 r1 r2",]);
    assert_eq!(work.lies(), "r4 s1 s2 s3 s4 r1 r2 r3");
    let c4 = work.led(&Leading { rows: 3, ..by_place(1, "2-8") });
    assert_eq!(c4, ["r4 > s1 s2 s3 s4 r1 r2 r3", "r4 < r3 r2 r1 s4 s3 s2 s1", "r4 > s1 s2 s3 s4 r1 r2 r3"]);
    assert_eq!(work.lies(), "s1 s2 s3 s4 r1 r2 r3 r4");
    let c5 = work.led(&Leading { mirror: Mirror::Also, ..by_place(1, "2-4") });
    assert_eq!(c5, ["s1 > s2 s3 s4", "r4 < r3 r2 r1"]);
    assert_eq!(work.lies(), "s2 s3 s4 s1 r4 r1 r2 r3");
    work.hang(None, &[single("g", 1)], &[], &NewLegs::Out).unwrap();
    let rests = |work: &LegOrder| {
        let resting = work.out().iter().find(|resting| work.name(resting.leg).set == "g").unwrap();
        resting.right_of.map(|leg| work.word(leg))
    };
    let c6 = work.lead(None, &Leading { leader_ties: true, ..by_set("g", "3-6") }).unwrap();
    assert_eq!((work.crossed(&c6[0]), c6[0].leader_ties), ("g1 > s4 s1 r4 r1".to_owned(), true));
    assert_eq!(rests(&work).as_deref(), Some("r1"), "between places 6 and 7");
    let c6 = work.led(&Leading { leader_ties: true, ..by_set("g", "3-6") });
    assert_eq!(c6, ["g1 < r1 r4 s1 s4"]);
    assert_eq!((rests(&work).as_deref(), work.lies().as_str()), (Some("s3"), "s2 s3 s4 s1 r4 r1 r2 r3"));
    let amid = work.lead(None, &by_place(5, "1-8")).unwrap_err();
    assert_eq!(amid, PlaceError::Amid { leader: 5, left: 4, right: 3 });
    assert_eq!(work.led(&by_place(5, "1-4")), ["r4 < s1 s4 s3 s2"]);
    assert_eq!(work.lies(), "r4 s2 s3 s4 s1 r1 r2 r3");
    let c8 = work.led(&Leading { stays: true, ..by_set("g", "1-8") });
    assert_eq!(c8, ["g1 > r4 s2 s3 s4 s1 r1 r2 r3"]);
    assert_eq!(work.lies(), "r4 s2 s3 s4 s1 r1 r2 r3 g1");
    assert_eq!(work.led(&by_place(9, "1-8")), ["g1 < r3 r2 r1 s1 s4 s3 s2 r4"]);
    assert_eq!(work.lies(), "g1 r4 s2 s3 s4 s1 r1 r2 r3");
    assert_eq!(work.led(&by_place(1, "2-9")), ["g1 > r4 s2 s3 s4 s1 r1 r2 r3"]);
    assert_eq!(work.lies(), "r4 s2 s3 s4 s1 r1 r2 r3 g1");
    let top = work.end(None, &at("top")).unwrap();
    assert_eq!((work.words(&top).as_str(), work.end(None, &Selection::All).unwrap().len()), ("top1", 9));
}

#[test]
fn a_bag_with_gussets_closed_below() {
    let mut work = LegOrder::default();
    work.hang(Some("front"), &[folded("v", 4)], &[], &NewLegs::AtRight).unwrap();
    work.hang(Some("back"), &[folded("h", 4)], &[], &NewLegs::AtRight).unwrap();
    let d2 = work.tie(Some("front"), &Selection::All, &rows(3), &square()).unwrap();
    let found: Vec<String> = d2.iter().map(|row| places(row)).collect();
    assert_eq!(found, ["1 2 3 4, 5 6 7 8", "3 4 5 6", "1 2 3 4, 5 6 7 8"]);
    assert!(matches!(work.row(None), Err(PlaceError::NoRow { named: None, .. })), "which of the two?");
    work.close(&["front", "back"], Worked::Round).unwrap();
    assert_eq!(work.lies(), "v1 v2 v3 v4 v5 v6 v7 v8 h1 h2 h3 h4 h5 h6 h7 h8");
    let d4 = work.tie(None, &Selection::All, &KnotRows { shift: 2, ..KnotRows::default() }, &square()).unwrap();
    assert_eq!(work.tied(&d4[0]), "v3 v6 : v4 v5; v7 h2 : v8 h1; h3 h6 : h4 h5; h7 v2 : h8 v1");
    work.hang(None, &[folded("g", 4)], &[], &NewLegs::After(vec![8, 16])).unwrap();
    assert_eq!(work.lies(), "v1 v2 v3 v4 v5 v6 v7 v8 g1 g2 g3 g4 h1 h2 h3 h4 h5 h6 h7 h8 g5 g6 g7 g8");
    let d6 = work.tie(None, &Selection::All, &rows(2), &square()).unwrap();
    assert_eq!(
        work.tied(&d6[0]),
        "v1 v4 : v2 v3; v5 v8 : v6 v7; g1 g4 : g2 g3; h1 h4 : h2 h3; h5 h8 : h6 h7; g5 g8 : g6 g7"
    );
    assert_eq!(
        work.tied(&d6[1]),
        "v3 v6 : v4 v5; v7 g2 : v8 g1; g3 h2 : g4 h1; h3 h6 : h4 h5; h7 g6 : h8 g5; g7 v2 : g8 v1"
    );
    work.begin_at(None, 23).unwrap();
    assert_eq!(work.lies(), "g7 g8 v1 v2 v3 v4 v5 v6 v7 v8 g1 g2 g3 g4 h1 h2 h3 h4 h5 h6 h7 h8 g5 g6");
    work.work(None, Worked::Double).unwrap();
    assert_eq!(work.lies(), "g7 g6 g8 g5 v1 h8 v2 h7 v3 h6 v4 h5 v5 h4 v6 h3 v7 h2 v8 h1 g1 g4 g2 g3");
    let d8 = work.tie(None, &Selection::All, &KnotRows::default(), &square()).unwrap();
    assert_eq!(
        work.tied(&d8[0]),
        "g7 g5 : g6 g8; v1 h7 : h8 v2; v3 h5 : h6 v4; v5 h3 : h4 v6; v7 h1 : h2 v8; g1 g3 : g4 g2"
    );
}

/// First and last leg of each row, and its knots.
fn told(legs: usize, is_round: bool, field: &KnotRows) -> Result<String, PlaceError> {
    let rows = field_rows(legs, 4, is_round, field)?;
    let row = |starts: &Vec<usize>| format!("{}-{} ({})", starts[0] + 1, starts[starts.len() - 1] + 4, starts.len());
    Ok(rows.iter().map(row).collect::<Vec<_>>().join(", "))
}

#[test]
fn rows_of_squares_by_places_alone() {
    let leave = |left, between, right| Leave { left, between, right };
    let narrow = |narrow| KnotRows { narrow, ..rows(5) };
    for (legs, field, found) in [
        (16, rows(3), "1-16 (4), 3-14 (3), 1-16 (4)"),
        (16, KnotRows { leave: leave(2, 0, 2), ..rows(3) }, "3-14 (3), 1-16 (4), 3-14 (3)"),
        (18, KnotRows { leave: leave(0, 0, 2), ..rows(3) }, "1-16 (4), 3-18 (4), 1-16 (4)"),
        (18, KnotRows { leave: leave(1, 0, 1), ..rows(3) }, "2-17 (4), 4-15 (3), 2-17 (4)"),
        (16, narrow(MovingEdges::Left), "1-16 (4), 3-14 (3), 5-16 (3), 7-14 (2), 9-16 (2)"),
        (16, narrow(MovingEdges::Right), "1-16 (4), 3-14 (3), 1-12 (3), 3-10 (2), 1-8 (2)"),
        (
            16,
            KnotRows { columns: Some(1), widen: MovingEdges::Both, ..rows(4) },
            "7-10 (1), 5-12 (2), 3-14 (3), 1-16 (4)",
        ),
        (64, KnotRows { leave: leave(2, 4, 2), ..KnotRows::default() }, "3-62 (8)"),
    ] {
        assert_eq!(told(legs, false, &field), Ok(found.to_owned()), "{legs} legs, {field:?}");
    }
    let skipped = field_rows(64, 4, false, &KnotRows { leave: leave(2, 4, 2), ..KnotRows::default() });
    assert_eq!(skipped.unwrap()[0], [2, 10, 18, 26, 34, 42, 50, 58]);
    let round = field_rows(12, 4, true, &rows(3)).unwrap();
    assert_eq!(round, [[0, 4, 8], [2, 6, 10], [0, 4, 8]], "the last knot of the second row lies over the seam");
}

#[test]
fn what_does_not_come_out_is_told_with_both_readings() {
    let said = |legs, is_round, field: &KnotRows| {
        let error = told(legs, is_round, field).unwrap_err();
        format!("{error}: {}", error.remedy())
    };
    for (legs, is_round, field, words) in [
        (18, false, rows(3), "4 legs a knot leave 2 over: leave 1 at each edge (`leave = 1`), or 2 at one side"),
        (
            22,
            true,
            KnotRows::default(),
            "the round of 22 legs does not close: 5 knots take 20, 6 take 24: end 2 legs or add 2, or name the legs to be \
             worked",
        ),
        (
            16,
            false,
            KnotRows { columns: Some(1), widen: MovingEdges::Both, ..rows(5) },
            "row 5 wants 2 legs beyond the edge: work fewer rows, or begin with more legs at the edge",
        ),
        (
            16,
            false,
            KnotRows { shift: 2, ..rows(1) },
            "a flat row has an edge: it can't be shifted: leave 2 at the left instead",
        ),
        (
            16,
            false,
            KnotRows { narrow: MovingEdges::Both, ..KnotRows::default() },
            "knots under one another have no half: `narrow` can't be: say `alternate = true`",
        ),
        (
            20,
            false,
            KnotRows { leave: Leave { left: 4, between: 0, right: 0 }, ..rows(2) },
            "even rows would reach further out than odd ones: name the legs of all rows, or leave fewer than one knot takes",
        ),
        (3, false, KnotRows::default(), "4 legs are wanted, and 3 are there: take fewer a knot, or more legs"),
        (
            16,
            true,
            KnotRows { narrow: MovingEdges::Left, ..rows(2) },
            "a round has no edge: `narrow` can't be: take it out, or name some of the legs",
        ),
    ] {
        assert_eq!(said(legs, is_round, &field), words);
    }
    assert_eq!(field_rows(12, 3, false, &rows(2)), Err(PlaceError::OddHalf { each: 3 }));
    let mut work = LegOrder::default();
    let sets = HungCord { sets: vec!["worker".to_owned(), "filler".to_owned()], count: 2 };
    let unsaid = work.hang(None, std::slice::from_ref(&sets), &[], &NewLegs::AtRight).unwrap_err();
    assert!(unsaid.remedy().contains("(worker outside)"), "{}", unsaid.remedy());
    let mut work = LegOrder::default();
    let short = work.hang(None, &[sets], &order(&["2 worker", "filler", "worker"]), &NewLegs::AtRight).unwrap_err();
    assert_eq!(short.to_string(), "the order names 3 of `worker`; there are 2");
    let mut work = row_of(16);
    let mirror = Leading { mirror: Mirror::Also, ..by_place(1, "2-10") };
    let overlaps = work.lead(None, &mirror).unwrap_err();
    assert_eq!(overlaps.to_string(), "the leader's legs and their mirror both want 7-10");
    assert_eq!(work.lead(None, &by_place(17, "1-8")), Err(PlaceError::NoPlace { place: 17, legs: 16 }));
    assert!(Selection::of_word("9-4").is_err() && Selection::of_word("").is_err());
}

#[test]
fn small_cases_of_order() {
    let mut work = row_of(8);
    work.cross(None, &at("1-2"), &at("3-4")).unwrap();
    assert_eq!(work.lies(), "a3 a4 a1 a2 a5 a6 a7 a8");
    assert!(work.cross(None, &at("1-2"), &at("4-5")).is_err());

    let mut work = row_of(8);
    work.end(None, &at("1-2")).unwrap();
    assert_eq!(work.lies(), "a3 a4 a5 a6 a7 a8");

    let mut work = row_of(4);
    work.hang(None, &[folded("n", 1)], &[], &NewLegs::After(vec![2])).unwrap();
    assert_eq!(work.lies(), "a1 a2 n1 n2 a3 a4");

    let mut work = row_of(4);
    let ended = work.hang(None, &[single("n", 1)], &[], &NewLegs::Replacing(at("3"))).unwrap();
    assert_eq!((work.lies().as_str(), work.words(&ended).as_str()), ("a1 a2 n1 a4", "a3"));

    let mut work = row_of(4);
    let crown = KnotPlaces { takes: None, ties: Ties::All, after: After::Turns };
    let thrice = KnotRows { each: Some(4), times: 3, ..KnotRows::default() };
    work.tie(None, &Selection::All, &thrice, &crown).unwrap();
    assert_eq!(work.lies(), "a2 a3 a4 a1");
    let said = work.tie(None, &Selection::All, &KnotRows::default(), &crown);
    assert_eq!(said, Err(PlaceError::EachNotSaid { legs: 4 }));

    let spiral = || {
        let mut work = LegOrder::default();
        let cords = [folded("s", 1), folded("h", 1)];
        work.hang(None, &cords, &order(&["s", "h", "h", "s"]), &NewLegs::AtRight).unwrap();
        work
    };
    let mut work = spiral();
    work.tie(None, &Selection::All, &KnotRows { times: 5, ..KnotRows::default() }, &half()).unwrap();
    assert_eq!(work.lies(), "s2 h1 h2 s1");

    // Workers and fillers changed.
    let mut work = spiral();
    let changed = KnotPlaces { ties: Ties::Sets(vec!["h".to_owned()]), ..square() };
    let tied = work.tie(None, &Selection::All, &KnotRows::default(), &changed).unwrap();
    assert_eq!((work.lies().as_str(), work.tied(&tied[0]).as_str()), ("h1 s1 s2 h2", "h1 h2 : s1 s2"));

    let mut work = row_of(4);
    let josephine = knot(4, Ties::All, After::As(vec![3, 4, 1, 2]));
    work.tie(None, &Selection::All, &KnotRows::default(), &josephine).unwrap();
    assert_eq!(work.lies(), "a3 a4 a1 a2");

    let mut work = row_of(8);
    work.work(None, Worked::Round).unwrap();
    let round = work.led(&Leading { rows: 2, ..by_place(1, "2-8") });
    assert_eq!(round, ["a1 > a2 a3 a4 a5 a6 a7 a8"; 2]);
    assert_eq!(work.lies(), "a1 a2 a3 a4 a5 a6 a7 a8");
}

fn edges() -> impl Strategy<Value = MovingEdges> {
    prop::sample::select(vec![MovingEdges::None, MovingEdges::Left, MovingEdges::Right, MovingEdges::Both])
}

/// Left and right changed.
fn turned(edges: MovingEdges) -> MovingEdges {
    match edges {
        MovingEdges::Left => MovingEdges::Right,
        MovingEdges::Right => MovingEdges::Left,
        other => other,
    }
}

proptest! {
    /// Knots of a row lie beside one another within the legs, and a field turned round left for right is its mirror.
    #[test]
    fn a_field_has_a_mirror(
        legs in 1_usize..80,
        each in prop::sample::select(vec![2_usize, 4, 6]),
        (left, between, right) in (0_usize..6, 0_usize..3, 0_usize..6),
        (narrow, widen, alternate) in (edges(), edges(), any::<bool>()),
        count in 1_u32..6,
    ) {
        let leave = Leave { left, between, right };
        let field = KnotRows { leave, narrow, widen, alternate, rows: RowsAsked::Count(count), ..KnotRows::default() };
        let mirror = KnotRows {
            leave: Leave { left: right, between, right: left },
            narrow: turned(narrow),
            widen: turned(widen),
            ..field.clone()
        };
        let (rows, mirrored) = (field_rows(legs, each, false, &field), field_rows(legs, each, false, &mirror));
        prop_assert_eq!(rows.is_ok(), mirrored.is_ok(), "{:?} {:?}", rows, mirrored);
        if let (Ok(rows), Ok(mirrored)) = (rows, mirrored) {
            prop_assert_eq!(rows.len(), count as usize);
            for (row, mirrored) in rows.iter().zip(mirrored) {
                prop_assert!(row.windows(2).all(|pair| pair[0] + each + between == pair[1]));
                prop_assert!(row.iter().all(|start| start + each <= legs));
                let turned: Vec<usize> = row.iter().rev().map(|start| legs - each - start).collect();
                prop_assert_eq!(turned, mirrored);
            }
        }
    }

    /// A leader that goes there and back over its neighbours leaves everything as it lay, and crosses the same legs both ways.
    #[test]
    fn there_and_back_is_as_before(leader in 1_usize..20, far in 1_usize..20) {
        prop_assume!(leader != far);
        let mut work = row_of(19);
        let legs = if far > leader { format!("{}-{far}", leader + 1) } else { format!("{far}-{}", leader - 1) };
        let before = work.lies();
        let crossings = work.lead(None, &Leading { rows: 2, ..by_place(leader, &legs) }).unwrap();
        prop_assert_eq!(work.lies(), before);
        let mut back = crossings[1].over.clone();
        back.reverse();
        prop_assert_eq!(&crossings[0].over, &back);
        prop_assert_eq!(crossings[0].goes_right, far > leader);
    }

    /// Whatever is done, every leg lies in one place, or rests, or has ended.
    #[test]
    fn no_leg_is_lost_or_doubled(steps in prop::collection::vec((0_usize..7, 1_usize..20, 1_usize..20), 0..20)) {
        let mut work = row_of(12);
        let mut ended = Vec::new();
        for (what, one, other) in steps {
            let legs = at(&format!("{}-{}", one.min(other), one.max(other)));
            let field = KnotRows { times: 1 + u32::try_from(one).unwrap() % 3, ..KnotRows::default() };
            match what {
                0 => ended.extend(work.end(None, &legs).unwrap_or_default()),
                1 => drop(work.lead(None, &Leading { legs, ..by_place(other, "1") })),
                2 => drop(work.tie(None, &legs, &field, &half())),
                3 => drop(work.cross(None, &legs, &at(&format!("{}", one.max(other) + 1)))),
                4 => drop(work.hang(None, &[single("n", 1)], &[], &NewLegs::After(vec![one]))),
                5 => drop(work.lead(None, &Leading { legs, stays: one > 9, ..by_set("n", "1") })),
                _ => drop(work.hang(None, &[single("n", 1)], &[], &NewLegs::Out)),
            }
        }
        let mut all: Vec<LegId> = work.rows().iter().flat_map(|row| row.legs.clone()).chain(ended).collect();
        all.extend(work.out().iter().map(|resting| resting.leg));
        all.sort_unstable();
        // A place that is not there is refused, and nothing is hung then.
        let hung: std::collections::BTreeSet<LegId> = all.iter().copied().collect();
        prop_assert_eq!(all.len(), hung.len());
        prop_assert!(hung.len() >= 12);
    }
}
