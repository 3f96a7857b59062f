//! What was paid is not asked for again: revisions, from the first payment to one too many.

use proptest::prelude::*;
use rust_decimal::Decimal;
use serde_json::Value;

use crate::workshop::Workshop;

const DAY: &str = "2026-11-25";

/// A commission for articles at a price, so that its gross is known: 1.20 times as much.
fn articles(shop: &Workshop, quantity: u32, more: &str) {
    let text = format!(
        "[commission]\ntitle = \"Articles\"\nclient = \"Ada Quay\"\n{more}\n\n[[line]]\ntext = \"Article\"\nquantity = {quantity}\nunit-price = \"100.00\"\n"
    );
    shop.shop.write("shop/commissions/articles.toml", text);
}

fn money(value: &Value) -> Decimal {
    value.as_str().unwrap().parse().unwrap()
}

/// The last quote kept, as its page and as its document.
fn kept(shop: &Workshop, name: &str) -> (String, Value) {
    let page = |file: &str| shop.book(&["show", name, "--page", file], DAY).done();
    (page("quote.txt"), serde_json::from_str(&page("quote.json")).unwrap())
}

/// BR-CO-16 of EN 16931, its wording from memory: Amount due for payment (BT-115) = total with tax (BT-112) - paid amount (BT-113) + rounding amount
/// (BT-114), of which the program knows none. And what is to be paid adds up to it.
#[track_caller]
fn adds_up(quote: &Value) {
    let of = |name: &str| money(&quote["totals"][name]);
    assert_eq!(of("due"), of("gross") - of("paid"), "{quote}");
    let parts: Decimal = quote["schedule"].as_array().unwrap().iter().map(|part| money(&part["amount"])).sum();
    assert_eq!(parts, of("due"), "{quote}");
}

fn parts(quote: &Value) -> Vec<(String, String)> {
    let word = |part: &Value, key: &str| part[key].as_str().unwrap().to_owned();
    quote["schedule"].as_array().unwrap().iter().map(|part| (word(part, "kind"), word(part, "amount"))).collect()
}

fn part(kind: &str, amount: &str) -> (String, String) {
    (kind.to_owned(), amount.to_owned())
}

#[test]
fn a_revision_asks_for_what_is_left() {
    let shop = Workshop::new();
    // 1000.00 and a fifth of tax, of which 40 % are 480.00.
    articles(&shop, 10, "");
    shop.book(&["issue", "articles"], DAY).done();
    shop.book(&["mark", "2026-001", "accepted"], DAY).done();
    shop.book(&["pay", "2026-001", "400.00"], DAY).done();
    articles(&shop, 9, "");
    let issued = shop.book(&["issue", "articles"], DAY);
    assert!(issued.err.contains("changed: Paid so far: €400.00 in place of €0.00."), "{}", issued.err);
    let (page, quote) = kept(&shop, "2026-001");
    adds_up(&quote);
    assert_eq!((&quote["totals"]["paid"], &quote["totals"]["due"]), (&"400.00".into(), &"680.00".into()));
    // 40 % of 1080.00 are 432.00.
    assert_eq!(parts(&quote), [part("deposit", "32.00"), part("balance", "648.00")]);
    assert!(page.contains("Of the deposit of €432.00, €400.00 is paid."), "{page}");
    assert!(page.contains("Rest of the deposit of 40 %") && page.contains("-€400.00"), "{page}");
    // The deposit is paid in full by a further payment.
    shop.book(&["pay", "2026-001", "50.00"], DAY).done();
    articles(&shop, 8, "");
    shop.book(&["issue", "articles"], DAY).done();
    let (page, quote) = kept(&shop, "2026-001");
    adds_up(&quote);
    assert_eq!(parts(&quote), [part("balance", "510.00")]);
    assert!(page.contains("€450.00 is paid, and with it the deposit of €384.00."), "{page}");
    // What the book lists is what the page says.
    let listed = shop.json(&["list"], DAY)["commissions"][0].clone();
    assert_eq!((money(&listed["paid"]), money(&listed["due"])), (Decimal::from(450), Decimal::from(510)));
    shop.sound();
}

#[test]
fn more_paid_than_a_revision_comes_to_goes_back() {
    let shop = Workshop::new();
    articles(&shop, 10, "");
    shop.book(&["issue", "articles"], DAY).done();
    shop.book(&["pay", "2026-001", "480.00"], DAY).done();
    articles(&shop, 4, "");
    shop.book(&["issue", "articles"], DAY).done();
    let (page, quote) = kept(&shop, "2026-001");
    adds_up(&quote);
    assert!(page.contains("All of it is paid: nothing is left to pay.") && parts(&quote).is_empty(), "{page}");
    articles(&shop, 3, "");
    let issued = shop.book(&["issue", "articles"], DAY);
    assert!(
        issued.err.contains("look: More was paid than this comes to: €120.00 goes back to the client."),
        "{}",
        issued.err
    );
    let (page, quote) = kept(&shop, "2026-001");
    adds_up(&quote);
    assert_eq!((&quote["totals"]["due"], parts(&quote)), (&"-120.00".into(), vec![part("refund", "-120.00")]));
    assert!(page.contains("€480.00 is paid: €120.00 more than all of it comes to."), "{page}");
    let rows: Vec<&str> = page.lines().filter(|line| line.contains("Paid back to you")).collect();
    assert!(rows.len() == 2 && rows.iter().all(|row| row.ends_with(" €120.00")), "{page}");
    let list = shop.book(&["list"], DAY).done();
    assert!(list.contains("€120.00 goes back"), "{list}");
    assert!(shop.book(&["show", "2026-001"], DAY).done().contains("Goes back to the client"));
    let said = shop.book(&["pay", "2026-001", "-100.00"], DAY).done();
    assert!(said.contains("20.00 more was paid than it comes to"), "{said}");
    shop.sound();
}

#[test]
fn what_a_revision_notes_as_paid_goes_through_the_book() {
    let shop = Workshop::new();
    articles(&shop, 10, "paid = \"60.00\"");
    shop.book(&["issue", "articles"], DAY).done();
    // Noted before the first quote, it is a payment of the book, and may stay in the file.
    articles(&shop, 9, "paid = \"60.00\"");
    shop.book(&["issue", "articles"], DAY).done();
    assert_eq!(kept(&shop, "2026-001").1["totals"]["paid"], "60.00");
    articles(&shop, 8, "paid = \"400.00\"");
    let said = shop.book(&["issue", "articles"], DAY).refused();
    assert!(said.contains("its file says that 400.00 is paid, and by the book 60.00 was paid for 2026-001"), "{said}");
    assert!(said.contains("reeve book pay 2026-001 340.00"), "{said}");
    assert_eq!(shop.json(&["show", "2026-001"], DAY)["quotes"].as_array().unwrap().len(), 2);
    shop.book(&["pay", "2026-001", "340.00"], DAY).done();
    shop.book(&["issue", "articles"], DAY).done();
    assert_eq!(kept(&shop, "2026-001").1["totals"]["due"], "560.00");
    // A refund beyond what was paid leaves nothing noted, and nothing to refuse.
    shop.book(&["pay", "2026-001", "-410.00"], DAY).done();
    articles(&shop, 7, "");
    shop.book(&["issue", "articles"], DAY).done();
    assert_eq!(kept(&shop, "2026-001").1["totals"]["due"], "850.00");
    shop.book(&["pay", "2026-001", "410.00"], DAY).done();
    // Money of one currency is not counted in another.
    shop.shop.replace("shop/shop.toml", "currency = \"EUR\"", "currency = \"GBP\"");
    let said = shop.book(&["issue", "articles"], DAY).refused();
    assert!(said.contains("400.00 EUR was paid for 2026-001, and this quote is in GBP"), "{said}");
    shop.sound();
}

#[test]
fn a_deposit_of_all_is_kept_as_one() {
    let shop = Workshop::new();
    articles(&shop, 1, "deposit = \"100 %\"");
    shop.book(&["issue", "articles"], DAY).done();
    assert_eq!(parts(&kept(&shop, "2026-001").1), [part("deposit", "120.00")]);
    let whole = shop.book(&["show", "2026-001"], DAY).done();
    assert!(whole.contains("Deposit asked   €120.00"), "{whole}");
    // None is none, though it stands in the same place.
    articles(&shop, 2, "deposit = \"0 %\"");
    shop.book(&["issue", "articles"], DAY).done();
    assert_eq!(parts(&kept(&shop, "2026-001").1), [part("payment", "240.00")]);
    assert!(!shop.book(&["show", "2026-001"], DAY).done().contains("Deposit asked"));
}

/// A quote that is only looked at counts what the book knows as well.
#[test]
fn a_quote_on_the_way_to_a_revision_knows_what_was_paid() {
    let shop = Workshop::new();
    articles(&shop, 10, "");
    let due = |shop: &Workshop| {
        let told = shop.shop.run(&["quote", "articles", "--as", "json", "--on", DAY, "--shop", "shop"]).done();
        serde_json::from_str::<Value>(&told).unwrap()["totals"]["due"].clone()
    };
    assert_eq!(due(&shop), "1200.00");
    shop.book(&["enquire", "articles"], DAY).done();
    assert_eq!(due(&shop), "1200.00");
    shop.book(&["issue", "articles"], DAY).done();
    shop.book(&["pay", "2026-001", "400.00"], DAY).done();
    assert_eq!(due(&shop), "800.00");
    // Called off, the file begins another commission, of which nothing was paid.
    shop.book(&["mark", "2026-001", "cancelled"], DAY).done();
    assert_eq!(due(&shop), "1200.00");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 6, ..ProptestConfig::default() })]

    /// Payments, refunds and revisions in any order: page and document ask for gross less payments, and no more.
    #[test]
    fn every_revision_asks_for_gross_less_payments(
        first in 1_u32..20, course in prop::collection::vec((1_u32..20, -20_000_i64..90_000), 1..5), deposit in 0_u32..=100
    ) {
        let shop = Workshop::new();
        let deposit = format!("deposit = \"{deposit} %\"");
        articles(&shop, first, &deposit);
        shop.book(&["issue", "articles"], DAY).done();
        let (mut paid, mut quantity) = (Decimal::ZERO, first);
        for (next, cents) in course {
            let amount = Decimal::new(cents, 2);
            if !amount.is_zero() {
                shop.book(&["pay", "2026-001", &format!("{amount:.2}")], DAY).done();
                paid += amount;
            }
            if next == quantity {
                continue;
            }
            quantity = next;
            articles(&shop, quantity, &deposit);
            shop.book(&["issue", "articles"], DAY).done();
            let (_, quote) = kept(&shop, "2026-001");
            adds_up(&quote);
            prop_assert_eq!(money(&quote["totals"]["paid"]), paid);
            prop_assert_eq!(money(&quote["totals"]["gross"]), Decimal::from(quantity) * Decimal::from(120));
        }
        shop.sound();
    }
}
