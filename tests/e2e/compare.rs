//! Designs beside one another, some of them with faults.

use std::collections::BTreeMap;

use reeve_tests::TestShop;
use rust_decimal::Decimal;
use serde_json::Value;

const COMPARE: [&str; 5] = ["compare", "--shop", "shop", "--as", "csv"];

/// The lines of a table in order of name: leaving a row out must not change the others.
fn sorted(table: &str) -> Vec<&str> {
    let mut lines: Vec<&str> = table.lines().collect();
    lines.sort_unstable();
    lines
}

#[test]
fn a_design_with_faults_is_left_out_and_told() {
    let place = TestShop::starter();
    let all = place.run(&COMPARE).done();
    place.replace("shop/designs/fender-fob.toml", "figure-eight", "figure-ate");
    place.write("shop/designs/not-toml.toml", "[piece\n");
    let ran = place.run(&COMPARE);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
    let kept: Vec<&str> = all.lines().filter(|line| !line.contains("fender-fob")).collect();
    assert_eq!(sorted(&ran.out), sorted(&kept.join("\n")));
    for words in ["designs/fender-fob.toml:", "designs/not-toml.toml:", "figure-eight", "2 designs left out"] {
        assert!(ran.err.contains(words), "{words}: {}", ran.err);
    }
    let said = place.run(&["compare", "fender-fob", "not-toml", "--shop", "shop"]).refused();
    assert!(said.contains("figure-ate"), "{said}");
    // A shop with faults of its own has nothing to compare.
    place.replace("shop/shop.toml", "wage = \"24.00\"", "wage = 24.00");
    assert!(place.run(&COMPARE).refused().contains("bare number"));
}

/// A table of comma-separated values: its heads, and its rows.
fn csv(place: &TestShop, words: &[&str]) -> Vec<BTreeMap<String, String>> {
    let text = place.run(&[&["compare", "--shop", "shop", "--as", "csv"], words].concat()).done();
    let mut lines = text.lines();
    let heads: Vec<&str> = lines.next().unwrap().split(',').collect();
    let row =
        |line: &str| heads.iter().zip(line.split(',')).map(|(head, cell)| ((*head).into(), cell.into())).collect();
    lines.map(row).collect()
}

fn figure(row: &BTreeMap<String, String>, column: &str) -> f64 {
    row[column].parse().unwrap()
}

fn names(rows: &[BTreeMap<String, String>]) -> Vec<String> {
    rows.iter().map(|row| format!("{}:{}", row["design"], row["size"])).collect()
}

#[test]
fn rows_are_sorted_and_chosen_by_any_column() {
    let place = TestShop::starter();
    let all = csv(&place, &[]);
    assert_eq!(all.len(), 12, "nine designs, three sizes more");
    for column in all[0].keys().filter(|column| !["design", "size"].contains(&column.as_str())) {
        let sorted = csv(&place, &["--sort", column]);
        let known: Vec<f64> =
            sorted.iter().filter(|row| !row[column].is_empty()).map(|row| figure(row, column)).collect();
        assert!(known.windows(2).all(|pair| pair[0] >= pair[1]), "{column}: {known:?}");
        let middle = known[known.len() / 2];
        let chosen = csv(&place, &["--where", &format!("{column}>={middle}")]);
        assert_eq!(chosen.len(), known.iter().filter(|figure| **figure >= middle).count(), "{column}");
    }
    assert_eq!(names(&csv(&place, &["--where", "size=long", "--where", "hours<9"])), ["curlew-hanger:long"]);
    assert_eq!(names(&csv(&place, &["--size", "long"])), ["curlew-hanger:long"]);
    assert_eq!(csv(&place, &["--where", "hours<0"]).len(), 0);
}

#[test]
fn what_buyers_pay_stands_beside_the_aim() {
    let place = TestShop::starter();
    let row = |words: &[&str]| csv(&place, words).into_iter().find(|row| row["design"] == "bay-leaf").unwrap();
    let (known, given) = (row(&[]), row(&["--price", "bay-leaf=40"]));
    assert_eq!((known["market"].as_str(), given["market"].as_str()), ("26.00", "40"));
    assert_eq!(known["price"], given["price"]);
    assert!(figure(&given, "market-per-hour") > figure(&given, "per-hour"));
    assert!(figure(&known, "market-per-hour") < figure(&known, "per-hour"));
    // At the price by the aim, what buyers pay would earn the same.
    let same = row(&["--price", &format!("bay-leaf={}", known["price"])]);
    assert_eq!(same["margin"], same["market-margin"]);
    assert_eq!(same["per-hour"], same["market-per-hour"]);
}

#[test]
fn inputs_are_changed_one_or_several() {
    let place = TestShop::starter();
    let margin = |words: &[&str]| -> f64 {
        let rows = csv(&place, &[&["curlew-hanger", "--where", "market>0"], words].concat());
        rows.iter().filter(|row| row["size"].is_empty()).map(|row| figure(row, "market-margin")).sum()
    };
    let usual = margin(&[]);
    for change in ["cord=+10%", "wage=+10%", "overhead=+10%", "fees=+10%", "pace=+10%"] {
        assert!(margin(&["--what-if", change]) < usual, "{change}");
    }
    for change in ["cord:cotton-4-ecru=0.01", "wage=20.00", "overhead=1", "fees=1%", "pace=0.9"] {
        assert!(margin(&["--what-if", change]) > usual, "{change}");
    }
    assert!(margin(&["--what-if", "wage=+10%", "--what-if", "fees=+10%"]) < margin(&["--what-if", "wage=+10%"]));
    let page = place.run(&["compare", "--what-if", "wage=-5%", "--shop", "shop"]).done();
    assert!(page.contains("What if: wage -5 %"), "{page}");
}

/// All money ten times as much is another currency: what earns most still earns most.
#[test]
fn scaling_all_money_leaves_the_ranking() {
    let place = TestShop::starter();
    let ranked = |place: &TestShop, column| names(&csv(place, &["--sort", column]));
    let columns = ["per-hour", "contribution", "market-per-hour", "margin", "cost"];
    let before: Vec<_> = columns.iter().map(|column| ranked(&place, column)).collect();
    for (path, bytes) in place.tree() {
        if path.extension().is_some_and(|ending| ending == "toml") && path.starts_with("shop") {
            let text = String::from_utf8(bytes).unwrap();
            place.write(path.to_str().unwrap(), text.lines().map(ten_times).collect::<Vec<_>>().join("\n"));
        }
    }
    let row = |place: &TestShop| csv(place, &["bay-leaf"]).remove(0);
    assert!((figure(&row(&place), "market") - 260.0).abs() < 1e-9);
    let after: Vec<_> = columns.iter().map(|column| ranked(&place, column)).collect();
    assert_eq!(before, after);
}

/// The line with its amount of money ten times as much, if it has one: a quoted number without a unit.
fn ten_times(line: &str) -> String {
    let amount = line.split('"').nth(1).and_then(|quoted| Some((quoted, quoted.parse::<Decimal>().ok()?)));
    match amount {
        Some((quoted, amount)) if line.contains(" = \"") => {
            line.replace(&format!("\"{quoted}\""), &format!("\"{}\"", amount * Decimal::TEN))
        }
        _ => line.to_owned(),
    }
}

#[test]
fn a_sweep_of_prices_is_what_each_price_comes_to() {
    let place = TestShop::starter();
    let sweep =
        place.run(&["weigh", "curlew-hanger", "--prices", "80..120/0.50", "--shop", "shop", "--as", "csv"]).done();
    let rows: Vec<Vec<&str>> = sweep.lines().skip(1).map(|line| line.split(',').collect()).collect();
    assert_eq!(rows.len(), 81);
    let margins: Vec<f64> = rows.iter().map(|row| row[3].parse().unwrap()).collect();
    assert!(margins.windows(2).all(|pair| pair[0] < pair[1]));
    let told = csv(&place, &["curlew-hanger", "--price", "curlew-hanger=100.00"]);
    let at = rows.iter().find(|row| row[0] == "100.00" || row[0] == "100").unwrap();
    assert_eq!(at[3], told.iter().find(|row| row["size"].is_empty()).unwrap()["market-margin"]);
    for (prices, why) in [("120..80", "ends below"), ("80", "not a range"), ("80..120/0.001", "more than")] {
        let said = place.run(&["weigh", "curlew-hanger", "--prices", prices, "--shop", "shop"]).refused();
        assert!(said.contains(why), "{said}");
    }
}

#[test]
fn a_week_is_shared_out_within_hours_and_demand() {
    let place = TestShop::starter();
    let mix = |words: &[&str]| -> Value {
        let all = [&["mix", "--shop", "shop", "--as", "json"], words].concat();
        serde_json::from_str(&place.run(&all).done()).unwrap()
    };
    let told = mix(&[]);
    assert_eq!(told["hours"], "27");
    let each = told["designs"].as_array().unwrap();
    for design in each {
        assert!(design["pieces"].as_u64().unwrap() <= design["weekly"].as_u64().unwrap(), "{design}");
    }
    let decimal = |value: &Value| value.as_str().unwrap().parse::<f64>().unwrap();
    // What is set up once counts once for each design made.
    let hours_of = |one: &Value| {
        let (pieces, once) = (one["pieces"].as_f64().unwrap(), decimal(&one["once_hours"]));
        assert!(once > 0.0, "the starter shop sets every design up: {one}");
        if pieces > 0.0 { pieces * (decimal(&one["hours"]) - once) + once } else { 0.0 }
    };
    let taken: f64 = each.iter().map(hours_of).sum();
    assert!((taken - decimal(&told["hours_taken"])).abs() < 1e-6 && taken <= 27.0);
    // With more hours it brings more, and never more for an hour than the hour before was worth.
    let longer = mix(&["--hours", "30"]);
    assert!(decimal(&longer["contribution"]) > decimal(&told["contribution"]));
    assert!(decimal(&longer["another_hour"]) <= decimal(&told["another_hour"]));
    // The best by the hour, and nothing else wanted: all of it.
    let one = mix(&["curlew-hanger", "--hours", "10", "--demand", "curlew-hanger:short=2"]);
    let short = one["designs"].as_array().unwrap().iter().find(|design| design["size"] == "short").unwrap();
    assert_eq!(short["pieces"], 2);
    place.replace("shop/shop.toml", "weekly-hours = 27\n", "");
    assert!(place.run(&["mix", "--shop", "shop"]).refused().contains("how many bench hours a week has"));
}

/// A knot that is not read for its file's name leaves out the designs tied of it, and says so; and nothing is kept of that.
#[test]
fn what_is_left_out_for_a_file_that_is_not_read_is_said_and_not_kept() {
    let place = TestShop::starter();
    let all = place.run(&COMPARE).done();
    let (right, wrong) = (place.path("shop/knots/collared-square.toml"), place.path("shop/knots/collared-square.TOML"));
    std::fs::rename(&right, &wrong).unwrap();
    let misnamed = place.run(&COMPARE);
    assert_eq!(misnamed.code, Some(2), "{}", misnamed.err);
    assert!(misnamed.err.contains("is not read") && misnamed.err.contains("1 design left out"), "{}", misnamed.err);
    assert!(!misnamed.out.contains("capstan-carrier") && misnamed.out.lines().count() < all.lines().count());
    std::fs::remove_file(&wrong).unwrap();
    let gone = place.run(&COMPARE);
    assert!(gone.code == Some(2) && gone.err.contains("no knot is called `collared-square`"), "{}", gone.err);
}

/// A knot that no catalogue has.
const BIGHT: &str = "[knot]\nname = \"bight\"\ntitle = \"bight knot\"\ntogether = true\nkind = \"single\"\nsummary = \"A trial.\"\n\n\
                     [[role]]\nrole = \"working\"\nlegs = [1, 20]\nmoves = [{ along = 6 }]\nsource = \"your sample\"\n\
                     note = \"A trial.\"\n\n[rise]\ndiameters = 3\nsource = \"your sample\"\nnote = \"A trial.\"\n\n[time]\nbase = 9\npull = 2\nsource = \"your sample\"\nnote = \"A trial.\"\n";

/// The folder in which rows are kept from one look to the next.
fn shelf(place: &TestShop) -> std::path::PathBuf {
    place.own().join("cache/reeve")
}

/// The one file of the shelf.
fn kept_file(place: &TestShop) -> std::path::PathBuf {
    std::fs::read_dir(shelf(place)).unwrap().next().unwrap().unwrap().path()
}

/// Whatever a row rests on: when that changes the row does, though rows are kept from one look to the next.
#[test]
fn kept_rows_follow_from_what_they_rest_on() {
    let place = TestShop::starter();
    let looked = || place.run(&COMPARE).done();
    let anew = || {
        std::fs::remove_dir_all(shelf(&place)).unwrap();
        looked()
    };
    let mut before = looked();
    let made = std::fs::read(kept_file(&place)).unwrap();
    assert_eq!(looked(), before);
    assert_eq!(std::fs::read(kept_file(&place)).unwrap(), made, "nothing new was worked out");
    let sample = "knots sample --cord cotton-4-ecru --knot square --tied 10 --before 150cm --after 85cm --made 14.5cm \
                  --shop shop";
    let edits: [(&str, &dyn Fn()); 7] = [
        ("the rates", &|| place.replace("shop/shop.toml", "wage = \"24.00\"", "wage = \"25.00\"")),
        ("the store", &|| place.replace("shop/store/cords.toml", "price = \"", "price = \"1")),
        ("a design, and those it is a part of", &|| {
            place.replace("shop/designs/bay-leaf.toml", "bare = \"12 mm\"", "bare = \"92 mm\"");
        }),
        ("a knot of the shop's own", &|| {
            place.write("shop/knots/bight.toml", BIGHT);
            place.replace("shop/designs/fender-fob.toml", "knot = \"figure-eight\"", "knot = \"bight\"");
        }),
        ("the same knot, altered", &|| place.replace("shop/knots/bight.toml", "base = 9", "base = 99")),
        ("a sample", &|| {
            drop(place.run(&sample.split(' ').filter(|word| !word.is_empty()).collect::<Vec<_>>()).done());
        }),
        ("one design less", &|| std::fs::remove_file(place.path("shop/designs/fender-fob.toml")).unwrap()),
    ];
    for (what, edit) in edits {
        edit();
        let after = looked();
        assert_ne!(after, before, "{what}");
        assert_eq!(anew(), after, "{what}");
        before = after;
    }
    // What is damaged, or can't be kept at all, costs time and nothing else.
    let mut bytes = std::fs::read(kept_file(&place)).unwrap();
    let last = bytes.len() - 1;
    bytes[last] ^= 1;
    std::fs::write(kept_file(&place), bytes).unwrap();
    assert_eq!(looked(), before);
    std::fs::remove_dir_all(shelf(&place)).unwrap();
    std::fs::write(shelf(&place), "not a folder").unwrap();
    assert_eq!(looked(), before);
}
