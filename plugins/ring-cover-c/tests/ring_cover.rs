//! The example in C: it compiles without a warning, and its figures hold.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::f64::consts::PI;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;

use reeve_catalogue as catalogue;
use reeve_measure::Length;

const STRICT: [&str; 6] = ["-std=c11", "-ffp-contract=off", "-Wall", "-Wextra", "-Wpedantic", "-Werror"];

/// Compiles with every warning an error; whoever has Rust on this system has a C compiler, which links for it.
fn compile(more: &[&str], sources: &[&str], into: &Path) {
    let mut cc = Command::new(std::env::var_os("CC").unwrap_or_else(|| "cc".into()));
    cc.current_dir(env!("CARGO_MANIFEST_DIR")).args(STRICT).args(["-I", "../kit", "-o"]).arg(into);
    let done = cc.args(more).args(sources).output().unwrap();
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
}

fn built(name: &str) -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR")).join(name)
}

/// The program that asks.
static ASK: LazyLock<PathBuf> = LazyLock::new(|| {
    let program = built("ask-ring-cover");
    compile(&[], &["tests/ask.c", "ring_cover.c"], &program);
    program
});

#[derive(Debug, Clone, Copy)]
struct Taken {
    working: f64,
    rise: f64,
    draws: f64,
}

fn ask(cord: f64, give: f64, section: f64, inside: f64) -> Result<Taken, String> {
    let figures = [cord, give, section, inside].map(|figure| format!("{figure:?}"));
    let answer = Command::new(&*ASK).args(figures).output().unwrap();
    assert!(answer.status.success(), "{answer:?}");
    let text = String::from_utf8(answer.stdout).unwrap();
    let (status, rest) = text.trim_end().split_once(' ').unwrap();
    if status != "done" {
        return Err(rest.to_owned());
    }
    let figures: Vec<f64> = rest.split(' ').map(|figure| figure.parse().unwrap()).collect();
    let [working, rise, _, draws] = figures[..] else { panic!("{rest}") };
    Ok(Taken { working, rise, draws })
}

fn taken(cord: f64, give: f64, section: f64, inside: f64) -> Taken {
    ask(cord, give, section, inside).unwrap()
}

#[test]
fn it_compiles_as_a_library_without_a_warning() {
    compile(&["-O2", "-fPIC", "-shared"], &["ring_cover.c"], &built("libring_cover.so"));
}

#[test]
fn hitches_touch_on_the_inner_side() {
    for (cord, inside) in [(2.0, 50.0), (1.0, 40.0), (3.3, 125.0), (5.0, 15.0)] {
        let taken = taken(cord, 0.0, 5.0, inside);
        let room = PI * (inside - cord) / cord;
        assert!(taken.draws <= room && taken.draws > room - 1.0, "{taken:?}");
    }
}

#[test]
fn a_cover_finds_room_on_its_own_ring_and_leaves_none() {
    // The program gives a ring as much room as it is long inside.
    for (cord, inside) in [(2.0, 50.0), (1.0, 40.0), (0.5, 600.0), (5.0, 15.0)] {
        let left = PI * inside - taken(cord, 0.0, 5.0, inside).rise;
        assert!(left > 0.0 && left < 3.2 * cord, "{left} mm");
    }
}

#[test]
fn a_hitch_is_the_catalogues_half_hitch_and_one_cord_across() {
    let knots = catalogue::Catalogue::embedded();
    for (cord, section) in [(2.0, 5.0), (1.0, 8.0), (4.0, 3.0)] {
        let setting = catalogue::Setting {
            cord: Length::mm(cord),
            working: 1,
            core: catalogue::Core::Rod(Length::mm(section)),
            give: 0.0,
            parameters: &[],
        };
        let theirs = knots.find("half-hitch").unwrap().taken(&setting).unwrap().working.as_mm() + cord;
        let ours = taken(cord, 0.0, section, 50.0);
        assert!((ours.working / ours.draws - theirs).abs() < 1e-9, "{ours:?}: not {theirs} each");
    }
}

#[test]
fn a_rail_takes_most_of_the_published_line_and_not_more() {
    // "The Ringbolt Hitch", frayedknotarts.com/tutorials/coxcombing/ringbolt.html: on a pipe rail of 1.75 inches, in line of
    // 3/32 inch, each of three lines comes to about nine yards for each foot of rail, as a rule of thumb. DIFFERENCE: there
    // three lines are hitched to either side in turn, so that each runs further along the ridge, and the rule is to have
    // enough: ours is about four fifths of it. A ring of 600 mm is as good as straight.
    let (inch, yard) = (25.4, 914.4);
    let cover = taken(3.0 / 32.0 * inch, 0.0, 1.75 * inch, 600.0);
    let part = cover.working / cover.rise * 12.0 * inch / (3.0 * 9.0 * yard);
    assert!((0.7..=1.0).contains(&part), "{part}");
}

#[test]
fn lengths_scale_with_the_setting_to_the_last_bit() {
    for (cord, section, inside) in [(2.0, 5.0, 50.0), (1.7, 4.1, 33.3), (3.0, 12.0, 290.0)] {
        let (one, two) = (taken(cord, 0.07, section, inside), taken(2.0 * cord, 0.07, 2.0 * section, 2.0 * inside));
        assert_eq!((2.0 * one.working).to_bits(), two.working.to_bits());
        assert_eq!((2.0 * one.rise).to_bits(), two.rise.to_bits());
        assert_eq!(one.draws.to_bits(), two.draws.to_bits());
    }
}

#[test]
fn a_larger_ring_a_thicker_one_and_a_harder_cord_never_take_less() {
    for (cord, section, inside) in [(2.0, 5.0, 50.0), (1.0, 4.0, 33.0), (3.0, 12.0, 290.0)] {
        let usual = taken(cord, 0.1, section, inside).working;
        for step in [0.1, 1.0, 5.0] {
            assert!(taken(cord, 0.1, section, inside + step).working >= usual);
            assert!(taken(cord, 0.1, section + step, inside).working >= usual);
        }
        assert!(taken(cord, 0.05, section, inside).working >= usual);
    }
}

#[test]
fn a_hole_that_closes_is_refused_with_the_least_ring() {
    let words = ask(4.0, 0.0, 3.0, 10.0).unwrap_err();
    assert_eq!(
        words,
        "0 a ring of 10.0 mm inside leaves no hole when it is covered with a cord of 4.0 mm. Take a ring of 12.0 mm inside or \
         more, or a thinner cord"
    );
    taken(4.0, 0.0, 3.0, 12.0);
}

#[test]
fn more_than_one_piece_of_cord_is_refused() {
    let words = ask(0.2, 0.0, 50.0, 600.0).unwrap_err();
    assert_eq!(
        words,
        "0 it takes 1494 m of cord, and one piece is at most 500 m. Take a smaller ring or a thicker cord"
    );
}
