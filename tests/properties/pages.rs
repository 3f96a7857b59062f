//! Pages of random commissions.

use proptest::prelude::*;
use reeve_pages::{Form, Words, lay_out};
use reeve_shop::{Order, Shop};
use reeve_tests::TestShop;

use crate::random::plans;
use crate::{cases, order};

/// Everything the client may be sent: text, HTML and JSON.
pub(crate) fn client_pages(shop: &Shop, order: &Order) -> [String; 3] {
    let rates = shop.rates().unwrap();
    let templates = reeve_pages::load(&[], &reeve_pages::Phrases::of_language(reeve_pages::ENGLISH)).unwrap();
    let view = reeve_pages::quote::quote_page(&order.priced.quote, rates, &Words::new(rates).unwrap());
    let page = |form| lay_out(&templates, "quote", form, &view).unwrap();
    [page(Form::Text), page(Form::Html), serde_json::to_string_pretty(&order.priced.quote).unwrap()]
}

/// Everything the maker keeps: costing and bench sheet, and the costing for other programs.
pub(crate) fn makers_pages(shop: &Shop, order: &Order) -> Vec<String> {
    let rates = shop.rates().unwrap();
    let words = Words::new(rates).unwrap();
    let templates = reeve_pages::load(&[], &reeve_pages::Phrases::of_language(reeve_pages::ENGLISH)).unwrap();
    let costing = reeve_pages::costing::costing_page(&order.priced, shop.basis().unwrap(), &words);
    let bench = reeve_pages::bench::bench_page(&order.priced, rates, &words);
    let mut pages = vec![serde_json::to_string_pretty(&reeve_pages::json::costing_json(&order.priced)).unwrap()];
    for form in [Form::Text, Form::Html] {
        pages.push(lay_out(&templates, "costing", form, &costing).unwrap());
        pages.push(lay_out(&templates, "bench", form, &bench).unwrap());
    }
    pages
}

pub(crate) fn opened(shop: &TestShop) -> (Shop, Order) {
    let order = order(shop);
    (shop.open().value, order)
}

proptest! {
    #![proptest_config(cases(32))]

    #[test]
    fn the_same_shop_gives_the_same_bytes(plan in plans()) {
        let shop = plan.shop();
        let (first, second) = (opened(&shop), opened(&shop));
        prop_assert_eq!(client_pages(&first.0, &first.1), client_pages(&second.0, &second.1));
        prop_assert_eq!(makers_pages(&first.0, &first.1), makers_pages(&second.0, &second.1));
    }

    #[test]
    fn text_keeps_to_80_columns(plan in plans()) {
        let (shop, order) = opened(&plan.shop());
        let [quote, ..] = client_pages(&shop, &order);
        for line in quote.lines() {
            prop_assert!(line.chars().count() <= 80, "{}", line);
        }
    }
}
