//! The chart of the knots and the page of one, into a file or to standard output.

use reeve_tests::TestShop;

#[test]
fn the_chart_is_written_into_the_file_that_is_named() {
    let place = TestShop::starter();
    let printed = place.run(&["knots", "chart", "--shop", "shop"]).done();
    let ran = place.run(&["knots", "chart", "--shop", "shop", "--out", "wall/chart.html"]);
    assert_eq!((ran.code, ran.out.as_str(), ran.err.as_str()), (Some(0), "", "wrote wall/chart.html\n"));
    assert_eq!(place.read("wall/chart.html"), printed);
}

#[test]
fn the_page_of_a_knot_is_written_in_every_form() {
    let place = TestShop::none();
    for form in ["text", "html", "json"] {
        let words = ["knots", "show", "crown", "--as", form];
        let printed = place.run(&words).done();
        let ran = place.run(&[&words[..], &["--out", "crown", "--replace"]].concat());
        assert_eq!((ran.out.as_str(), ran.err.as_str()), ("", "wrote crown\n"), "{form}");
        assert_eq!(place.read("crown"), printed, "{form}");
    }
}

#[test]
fn a_chart_of_one_kind_holds_that_kind_alone() {
    let place = TestShop::none();
    let cards = |page: &str| page.matches("<article").count();
    let all = place.run(&["knots", "chart"]).done();
    let kinds = ["sennit", "row", "mounting", "wrap", "single"];
    let parts: Vec<String> = kinds.iter().map(|kind| place.run(&["knots", "chart", "--kind", kind]).done()).collect();
    assert_eq!(parts.iter().map(|page| cards(page)).sum::<usize>(), cards(&all));
    assert!(parts[2].contains("id=\"larks-head\"") && !parts[2].contains("id=\"square\""));
}

#[test]
fn the_chart_has_the_shops_own_knots_and_its_name() {
    let place = TestShop::starter();
    let page = place.run(&["knots", "chart", "--shop", "shop"]).done();
    assert!(page.contains("id=\"collared-square\"") && page.contains("Tallowby Knotted Work"));
    let bare = place.run(&["knots", "chart"]).done();
    assert!(!bare.contains("collared-square") && !bare.contains("Tallowby"));
}

#[test]
fn millimetres_follow_the_cord_and_diameters_do_not() {
    let place = TestShop::none();
    let rows = |cord: &str| {
        let page = place.run(&["knots", "chart", "--cord", cord]).done();
        let cells = page
            .split("<td class=\"figure\">")
            .skip(1)
            .map(|cell| cell.split('<').next().unwrap().parse::<f64>().unwrap());
        cells.collect::<Vec<f64>>()
    };
    let (thin, thick) = (rows("3"), rows("6"));
    assert!(thin.len() > 60 && thin.len() == thick.len());
    for (thin, thick) in thin.chunks(2).zip(thick.chunks(2)) {
        assert!((thin[0] - thick[0]).abs() < 1e-9, "{thin:?} {thick:?}");
        assert!((thin[1] * 2.0 - thick[1]).abs() < 0.11, "{thin:?} {thick:?}");
    }
}

#[test]
fn a_template_of_the_shop_makes_its_chart() {
    let place = TestShop::starter();
    place.write("shop/templates/chart.html", "{{ count }}{% for group in groups %}|{{ group.heading }}{% endfor %}");
    place.write("shop/templates/knot.html", "{{ title }} of {{ head.maker }}");
    let words = |command: &str| place.run(&["knots", command, "--shop", "shop"]).done();
    assert!(words("chart").ends_with("knots|Mountings|Sennits|Rows|Wraps|Single knots"), "{}", words("chart"));
    let page = place.run(&["knots", "show", "crown", "--as", "html", "--shop", "shop"]).done();
    assert_eq!(page, "crown knot of Tallowby Knotted Work");
    place.write("shop/templates/chart.html", "\n{{ nothing }}");
    let said = place.run(&["knots", "chart", "--shop", "shop", "--out", "chart.html"]).refused();
    assert!(said.contains("shop/templates/chart.html:2:"), "{said}");
    assert!(!place.path("chart.html").exists());
}

#[test]
fn a_knot_that_nobody_has_tightened_has_no_svg_and_says_what_to_do() {
    let words = ["knots", "show", "cross-lacing", "--demo", "--as", "svg", "--out", "knot.svg"];
    let place = TestShop::none();
    let said = place.run(&words).refused();
    assert!(said.contains("has no drawing yet") && said.contains("reeve knots tighten cross-lacing --keep"), "{said}");
    assert!(!place.path("knot.svg").exists());
}
