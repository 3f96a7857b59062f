//! Units as a maker types them, against the definitions of the units.

use reeve_costing::store::{Cord, PutUp};
use reeve_reading::{Diagnostics, SourceText, read};
use reeve_shop::files::cords_file;
use rust_decimal::Decimal;

use crate::within;

/// Exact by definition, in millimetres: NIST Special Publication 811 (2008), appendix B.8; BIPM, SI Brochure.
const LENGTHS_MM: &[(&str, f64)] =
    &[("1 mm", 1.0), ("1 cm", 10.0), ("0.01 m", 10.0), ("1 in", 25.4), ("0.1 ft", 30.48), ("0.25 in", 6.35)];

/// In grams a metre. The tex is one gram a kilometre: ISO 1144 and NIST Special Publication 811, appendix B.8.
const DENSITIES_G_PER_M: &[(&str, f64)] = &[("8.2 g/m", 8.2), ("8200 tex", 8.2), ("8.2 ktex", 8.2)];

/// In grams: NIST Special Publication 811, appendix B.8, the avoirdupois pound and ounce.
const MASSES_G: &[(&str, f64)] =
    &[("250 g", 250.0), ("0.25 kg", 250.0), ("1 lb", 453.592_37), ("16 oz", 453.592_37), ("1 oz", 28.349_523_125)];

/// A cord of the store with these figures, through the reader.
fn cord(diameter: &str, weight: &str, put_up: &str) -> Cord {
    let text = format!(
        "[[cord]]\nname = \"c\"\ntitle = \"C\"\ndiameter = \"{diameter}\"\nweight = \"{weight}\"\n\
         [[cord.put-up]]\ntitle = \"reel\"\nprice = \"1.00\"\n{put_up}\n"
    );
    let desk = Diagnostics::new(SourceText::new("cords.toml", text));
    let cords = read(&desk, cords_file);
    let faults: Vec<String> = desk.into_faults().iter().map(|fault| fault.render(false)).collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    Cord::clone(&cords.unwrap()[0])
}

#[test]
fn lengths_convert_by_their_definitions() {
    for (typed, mm) in LENGTHS_MM {
        within(1e-12, cord(typed, "1 g/m", "length = \"9 m\"").diameter.as_mm(), *mm, typed);
    }
}

#[test]
fn linear_densities_convert_by_their_definitions() {
    for (typed, g_per_m) in DENSITIES_G_PER_M {
        within(1e-12, cord("4 mm", typed, "length = \"9 m\"").density.as_g_per_m(), *g_per_m, typed);
    }
}

#[test]
fn a_put_up_sold_by_weight_holds_the_length_of_that_weight() {
    for (typed, grams) in MASSES_G {
        let read = cord("4 mm", "2.5 g/m", &format!("weight = \"{typed}\""));
        // Never more cord than is on it: whole millimetres, rounded down.
        let PutUp { length_mm, price, .. } = &read.put_ups[0];
        let exact = grams / 2.5 * 1000.0;
        let short = exact - reeve_measure::count(*length_mm);
        assert!((0.0..1.0).contains(&short), "{typed}: {length_mm} mm for {exact} mm");
        assert_eq!(*price, Decimal::ONE);
    }
}
