//! What the maker earns is not in what the client reads.

use std::collections::BTreeSet;

use proptest::prelude::*;
use reeve_pages::json::{CostJson, costing_json};
use reeve_tests::TestShop;
use rust_decimal::Decimal;

use crate::cases;
use crate::pages::{client_pages, opened};
use crate::random::{Aim, Plan, Rates, plans};

/// Shops whose costs have digits that meet nowhere else: the price step and the given prices are whole fives.
const PLANTED: &[Planted] = &[
    Planted { wage: "23.4791", yearly: "7719.83", scheme: "net", rate: "rate = \"20 %\"", aim: "margin = \"31 %\"" },
    Planted {
        wage: "41.8397",
        yearly: "9173.67",
        scheme: "inclusive",
        rate: "rate = \"19 %\"",
        aim: "markup = \"47 %\"",
    },
    Planted { wage: "17.2639", yearly: "3391.51", scheme: "not-registered", rate: "", aim: "per-hour = \"53.1793\"" },
];

struct Planted {
    wage: &'static str,
    yearly: &'static str,
    scheme: &'static str,
    rate: &'static str,
    aim: &'static str,
}

impl Planted {
    /// The starter shop with these figures in place of its own.
    fn shop(&self, itemised: bool) -> TestShop {
        let shop = TestShop::starter();
        let Self { wage, yearly, scheme, rate, aim } = self;
        shop.write(
            "shop/shop.toml",
            format!(
                "[shop]\nname = \"Planted\"\ncurrency = \"EUR\"\n[tax]\nprices = \"{scheme}\"\n{rate}\n[pay]\nwage = \"{wage}\"\n\
                 [overhead]\nyearly = \"{yearly}\"\nbench-hours = 1117\n[bench]\npace = 1.13\n[bench.seconds]\nset-up = 431\n\
                 cut = 27\nbead = 19\npack = 347\n[bench.cutting]\nallowance = \"6 %\"\nstep = \"5 cm\"\n[price]\n{aim}\n\
                 step = \"5.00\"\nitemised = {itemised}\n[[fee]]\nname = \"Fee\"\nrate = \"2.37 %\"\nfixed = \"0.37\"\n[terms]\n\
                 valid-days = 30\ndeposit = \"40 %\"\n"
            ),
        );
        shop.write(
            "shop/commissions/order.toml",
            "[commission]\ntitle = \"Order\"\nclient = \"A client\"\n[[item]]\ndesign = \"curlew-hanger\"\nquantity = 6\n\
             [[item]]\ndesign = \"tideline-panel\"\n[[item]]\ndesign = \"spindrift-hanger\"\nprice = \"95.00\"\n\
             [[line]]\ntext = \"Pot\"\nquantity = 6\nunit-price = \"15.00\"\ncost = \"66.67\"\nminutes = 23\n\
             [delivery]\ntext = \"Parcel\"\nprice = \"10.00\"\ncost = \"6.43\"\n",
        );
        shop
    }
}

/// Every figure of a page: digits with their points, without the thousands' commas, 1.50 as 1.5.
fn figures(page: &str) -> BTreeSet<Decimal> {
    let plain: String = page.replace(',', "");
    let words = plain.split(|c: char| !c.is_ascii_digit() && c != '.');
    words.filter_map(|word| word.trim_matches('.').parse::<Decimal>().ok()).map(|figure| figure.normalize()).collect()
}

/// Every amount of a cost.
fn amounts(cost: &CostJson) -> [Decimal; 8] {
    [cost.cord, cost.fittings, cost.making, cost.finishing, cost.other, cost.overhead, cost.total, cost.hours]
}

/// Everything in the costing that is the maker's own, exact and as a page would round it.
fn secrets(order: &reeve_shop::Order, rates: &reeve_costing::rates::Rates) -> BTreeSet<Decimal> {
    let costing = costing_json(&order.priced);
    let mut secrets: Vec<Decimal> = costing.items.iter().map(|item| &item.cost).flat_map(amounts).collect();
    secrets.extend(costing.lines.iter().chain([&costing.cost]).flat_map(amounts));
    secrets.extend(costing.items.iter().filter(|item| !item.agreed).map(|item| item.aimed));
    secrets.extend([costing.fees, costing.margin, rates.wage]);
    secrets.extend(costing.margin_percent.into_iter().chain(costing.earned_per_hour));
    secrets.extend(costing.purchases.iter().flat_map(|bought| [bought.price, bought.charged]));
    let rounded = secrets.clone().into_iter().map(|secret| rates.currency.round_half_away(secret));
    // Whole numbers are quantities, days and years; nothing planted is one.
    secrets.iter().copied().chain(rounded).map(|s| s.normalize()).filter(|s| !s.fract().is_zero()).collect()
}

fn leaked(place: &TestShop) -> Vec<String> {
    let (shop, order) = opened(place);
    let secrets = secrets(&order, shop.rates().unwrap());
    assert!(secrets.len() > 30, "few figures were planted: {secrets:?}");
    let shown = figures(&client_pages(&shop, &order).join("\n"));
    secrets.intersection(&shown).map(ToString::to_string).collect()
}

#[test]
fn no_figure_of_the_costing_is_on_the_clients_page() {
    for planted in PLANTED {
        for itemised in [true, false] {
            assert_eq!(leaked(&planted.shop(itemised)), [""; 0], "wage {}, itemised {itemised}", planted.wage);
        }
    }
}

#[test]
fn the_search_finds_what_is_on_the_makers_page() {
    // A search that finds nothing anywhere would prove nothing.
    let place = PLANTED[0].shop(true);
    let (shop, order) = opened(&place);
    let sheet = crate::pages::makers_pages(&shop, &order).join("\n");
    let secrets = secrets(&order, shop.rates().unwrap());
    let found = secrets.intersection(&figures(&sheet)).count();
    assert!(found * 10 > secrets.len() * 9, "{found} of {}", secrets.len());
}

/// All prices agreed and nothing itemised: then nothing on the client's page may depend on a cost.
fn agreed(mut plan: Plan) -> Plan {
    plan.rates.itemised = false;
    for price in &mut plan.order.agreed {
        price.get_or_insert(4711);
    }
    plan
}

/// The same shop with quite other costs.
fn other_costs(plan: &Plan) -> Plan {
    let mut other = plan.clone();
    other.rates = Rates {
        wage: plan.rates.wage + 1234,
        overhead: plan.rates.overhead / 2 + 77,
        aim: Aim::Markup(123),
        minimum: plan.rates.minimum + 500,
        step: plan.rates.step + 25,
        fee: plan.rates.fee / 2,
        fixed_fee: plan.rates.fixed_fee + 11,
        pace: 6.0 - plan.rates.pace.max(1.0),
        ..plan.rates.clone()
    };
    other.order.lines.iter_mut().for_each(|line| line.cost += 333);
    other.designs.iter_mut().for_each(|design| design.minutes += 17);
    other
}

proptest! {
    #![proptest_config(cases(32))]

    #[test]
    fn a_quote_at_agreed_prices_is_the_same_whatever_it_costs(plan in plans()) {
        let plan = agreed(plan);
        let (shop, order) = opened(&plan.shop());
        let (other_shop, other_order) = opened(&other_costs(&plan).shop());
        prop_assert_ne!(&order.priced.outcome, &other_order.priced.outcome);
        prop_assert_eq!(client_pages(&shop, &order), client_pages(&other_shop, &other_order));
    }
}
