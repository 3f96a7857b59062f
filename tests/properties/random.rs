//! Random shops, as text: every one of them is sound.

use std::fmt::Write;

use proptest::prelude::*;
use reeve_tests::TestShop;

/// A shop with one or more designs and one commission.
#[derive(Debug, Clone)]
pub(crate) struct Plan {
    pub(crate) rates: Rates,
    pub(crate) designs: Vec<Design>,
    pub(crate) order: Order,
}

/// What `shop.toml` says. Amounts are in cents, percentages in tenths.
#[derive(Debug, Clone)]
pub(crate) struct Rates {
    pub(crate) scheme: &'static str,
    pub(crate) tax: u32,
    pub(crate) wage: u32,
    pub(crate) overhead: u32,
    pub(crate) aim: Aim,
    pub(crate) minimum: u32,
    pub(crate) step: u32,
    pub(crate) breaks: bool,
    pub(crate) fee: u32,
    pub(crate) fixed_fee: u32,
    pub(crate) fee_on: &'static str,
    pub(crate) deposit: u32,
    pub(crate) itemised: bool,
    pub(crate) currency: &'static str,
    pub(crate) pace: f64,
}

/// What every price aims at.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Aim {
    Margin(u32),
    Markup(u32),
    PerHour(u32),
}

/// A design: a number of arms on a ring, four legs each. Lengths in millimetres.
#[derive(Debug, Clone)]
pub(crate) struct Design {
    pub(crate) arms: u32,
    pub(crate) diameter: f64,
    pub(crate) sennit: &'static str,
    pub(crate) times: u32,
    pub(crate) bare: u32,
    pub(crate) net: Option<u32>,
    pub(crate) wrap: Option<u32>,
    pub(crate) bead: bool,
    pub(crate) row: bool,
    pub(crate) tail: u32,
    pub(crate) minutes: u32,
    pub(crate) once: bool,
}

/// A commission.
#[derive(Debug, Clone)]
pub(crate) struct Order {
    pub(crate) quantities: Vec<u32>,
    pub(crate) agreed: Vec<Option<u32>>,
    pub(crate) lines: Vec<Line>,
    pub(crate) discount: Option<Discount>,
    pub(crate) allowance: Option<u32>,
    pub(crate) charge: Option<u32>,
    pub(crate) rush: bool,
    pub(crate) paid: u32,
    pub(crate) deposit: Option<u32>,
}

/// A line with a price given.
#[derive(Debug, Clone)]
pub(crate) struct Line {
    pub(crate) quantity: i32,
    /// In hundred-thousandths.
    pub(crate) unit_price: u32,
    /// In tenths of a per cent; `None` is exempt.
    pub(crate) tax: Option<u32>,
    pub(crate) cost: u32,
}

/// Off all lines: tenths of a per cent, or cents.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Discount {
    Rate(u32),
    Amount(u32),
}

pub(crate) fn plans() -> impl Strategy<Value = Plan> {
    (rates(), prop::collection::vec(designs(), 1..3)).prop_flat_map(|(rates, designs)| {
        orders(designs.len()).prop_map(move |order| Plan { rates: rates.clone(), designs: designs.clone(), order })
    })
}

fn rates() -> impl Strategy<Value = Rates> {
    let aim = prop_oneof![
        (0_u32..700).prop_map(Aim::Margin),
        (0_u32..2000).prop_map(Aim::Markup),
        (0_u32..20_000).prop_map(Aim::PerHour)
    ];
    let money = (0_u32..8000, 0_u32..4_000_000, 0_u32..9000, 0_u32..1000);
    let fees = (0_u32..80, 0_u32..300, prop_oneof![Just("net"), Just("gross")]);
    let shown = (0_u32..1001, any::<bool>(), any::<bool>(), prop_oneof![Just("EUR"), Just("JPY"), Just("KWD")]);
    let tax = (prop_oneof![Just("net"), Just("inclusive"), Just("not-registered")], 0_u32..300);
    (aim, money, fees, shown, tax, 0.2..5.0_f64).prop_map(|(aim, money, fees, shown, tax, pace)| Rates {
        scheme: tax.0,
        tax: tax.1,
        wage: money.0,
        overhead: money.1,
        aim,
        minimum: money.2,
        step: money.3,
        breaks: shown.1,
        fee: fees.0,
        fixed_fee: fees.1,
        fee_on: fees.2,
        deposit: shown.0,
        itemised: shown.2,
        currency: shown.3,
        pace,
    })
}

pub(crate) fn designs() -> impl Strategy<Value = Design> {
    let sennit = prop_oneof![Just("square"), Just("half"), Just("alternating-half-hitches")];
    let work = (1_u32..9, 5_u32..90, sennit, 1_u32..60, 1_u32..400);
    let more = (prop::option::of(1_u32..20), prop::option::of(3_u32..40), any::<bool>(), any::<bool>());
    let end = (1_u32..600, 1_u32..300, any::<bool>());
    (work, more, end).prop_map(|(work, more, end)| Design {
        arms: work.0,
        diameter: f64::from(work.1) / 10.0,
        sennit: work.2,
        times: work.3,
        bare: work.4,
        net: more.0,
        wrap: more.1,
        bead: more.2,
        row: more.3,
        tail: end.0,
        minutes: end.1,
        once: end.2,
    })
}

fn orders(designs: usize) -> impl Strategy<Value = Order> {
    let made =
        (prop::collection::vec(1_u32..40, designs), prop::collection::vec(prop::option::of(0_u32..90_000), designs));
    let discount = prop_oneof![(0_u32..1001).prop_map(Discount::Rate), (0_u32..40_000).prop_map(Discount::Amount)];
    let whole = (prop::option::of(discount), prop::option::of(0_u32..9000), prop::option::of(0_u32..9000));
    let paid = (any::<bool>(), 0_u32..30_000, prop::option::of(0_u32..1001));
    (made, prop::collection::vec(lines(), 0..5), whole, paid).prop_map(|(made, lines, whole, paid)| Order {
        quantities: made.0,
        agreed: made.1,
        lines,
        discount: whole.0,
        allowance: whole.1,
        charge: whole.2,
        rush: paid.0,
        paid: paid.1,
        deposit: paid.2,
    })
}

fn lines() -> impl Strategy<Value = Line> {
    let quantity = prop_oneof![4 => 1_i32..200, 1 => -20_i32..0];
    (quantity, 0_u32..4_000_000, prop::option::of(0_u32..300), 0_u32..20_000)
        .prop_map(|(quantity, unit_price, tax, cost)| Line { quantity, unit_price, tax, cost })
}

/// Cents as they are typed.
pub(crate) fn money(cents: u32) -> String {
    format!("\"{}.{:02}\"", cents / 100, cents % 100)
}

/// Tenths of a per cent as they are typed.
pub(crate) fn percent(tenths: u32) -> String {
    format!("\"{}.{} %\"", tenths / 10, tenths % 10)
}

impl Plan {
    /// Writes the shop into a folder of its own.
    pub(crate) fn shop(&self) -> TestShop {
        let shop = TestShop::none();
        shop.write("shop/shop.toml", self.rates.text());
        for (at, design) in self.designs.iter().enumerate() {
            shop.write(&format!("shop/designs/design-{at}.toml"), design.text(at, 1.0));
        }
        shop.write("shop/store/cords.toml", self.cords());
        shop.write("shop/store/fittings.toml", self.fittings());
        shop.write("shop/commissions/order.toml", self.order.text(&self.rates));
        shop
    }

    fn cords(&self) -> String {
        self.designs.iter().enumerate().map(|(at, design)| design.cord(at, 1.0)).collect()
    }

    fn fittings(&self) -> String {
        self.designs.iter().enumerate().map(|(at, design)| design.fittings(at, 1.0)).collect()
    }
}

impl Rates {
    pub(crate) fn text(&self) -> String {
        let rate =
            if self.scheme == "not-registered" { String::new() } else { format!("rate = {}\n", percent(self.tax)) };
        let aim = match self.aim {
            Aim::Margin(tenths) => format!("margin = {}", percent(tenths)),
            Aim::Markup(tenths) => format!("markup = {}", percent(tenths)),
            Aim::PerHour(cents) => format!("per-hour = {}", money(cents)),
        };
        let breaks = if self.breaks { "\n[[price.break]]\nfrom = 4\noff = \"6.5 %\"\n" } else { "" };
        format!(
            "[shop]\nname = \"Random shop\"\ncurrency = \"{}\"\n\n[tax]\nprices = \"{}\"\n{rate}\n[pay]\nwage = {}\n\n\
             [overhead]\nyearly = {}\nbench-hours = 1000\n\n[bench]\npace = {}\n\n[bench.seconds]\nset-up = 300\nmarks = 40\ncut = 20\n\
             bead = 15\ntrim = 5\ncomb = 20\npack = 200\n\n[bench.cutting]\nallowance = \"5 %\"\nstep = \"1 cm\"\n\n[price]\n\
             {aim}\nminimum = {}\nstep = {}\nrush = \"12.5 %\"\nitemised = {}\n{breaks}\n[[fee]]\nname = \"Fee\"\nrate = {}\n\
             fixed = {}\non = \"{}\"\n\n[terms]\nvalid-days = 30\ndeposit = {}\n",
            self.currency,
            self.scheme,
            money(self.wage),
            money(self.overhead),
            self.pace,
            money(self.minimum),
            money(self.step),
            self.itemised,
            percent(self.fee),
            money(self.fixed_fee),
            self.fee_on,
            percent(self.deposit),
        )
    }
}

impl Design {
    /// A length as typed, so many times as long.
    fn mm(length: f64, scale: f64) -> String {
        format!("\"{:.4} mm\"", length * scale)
    }

    /// The cord of the design.
    pub(crate) fn cord(&self, at: usize, scale: f64) -> String {
        format!(
            "[[cord]]\nname = \"cord-{at}\"\ntitle = \"Cord {at}\"\ndiameter = {}\nfibre = \"cotton\"\n\n\
             [[cord.put-up]]\ntitle = \"reel\"\nlength = \"900 m\"\nprice = \"81.37\"\n\n\
             [[cord.put-up]]\ntitle = \"cone\"\nlength = \"2000 m\"\nprice = \"161.41\"\n\n",
            Self::mm(self.diameter, scale)
        )
    }

    /// Ring and bead, large enough for every random design.
    pub(crate) fn fittings(&self, at: usize, scale: f64) -> String {
        format!(
            "[[fitting]]\nname = \"ring-{at}\"\ntitle = \"ring {at}\"\nsection = {}\ninner = {}\nweight = \"20 g\"\n\
             price = \"3.19\"\n\n[[fitting]]\nname = \"bead-{at}\"\ntitle = \"bead {at}\"\nbore = {}\nlength = {}\n\
             price = \"0.53\"\n\n",
            Self::mm(5.0, scale),
            Self::mm(1500.0, scale),
            Self::mm(self.diameter * 3.0, scale),
            Self::mm(20.0, scale),
        )
    }

    /// The design's file; all its lengths so many times as long.
    pub(crate) fn text(&self, at: usize, scale: f64) -> String {
        let mut text = self.head(at);
        text += &self.groups(at);
        let _ = write!(text, "[[step]]\nknot = \"larks-head\"\non = \"ring-{at}\"\nhang = [\"arms\"]\n\n");
        let _ = write!(
            text,
            "[[step]]\nknot = \"{}\"\ntimes = {}\ncolumns = {}\nworking = [\"worker\"]\ncore = [\"filler\"]\n\n",
            self.sennit, self.times, self.arms
        );
        let _ = write!(text, "[[step]]\nbare = {}\n{BOTH}", Self::mm(f64::from(self.bare), scale));
        text += &self.optional_steps(at);
        let _ = write!(text, "[[step]]\ntail = {}\ncombed = true\n{BOTH}", Self::mm(f64::from(self.tail), scale));
        text
    }

    fn head(&self, at: usize) -> String {
        format!(
            "[piece]\nname = \"Design {at}\"\npurpose = \"wall-panel\"\n\n[[task]]\nname = \"Task\"\nminutes = {}\nonce = {}\n\
             cost = \"1.07\"\n\n",
            self.minutes, self.once
        )
    }

    fn groups(&self, at: usize) -> String {
        let mut text = format!(
            "[[cord]]\ngroup = \"arms\"\nof = \"cord-{at}\"\ncount = {}\nfolded = true\nlegs = [\"worker\", \"filler\"]\n\n",
            self.arms * 2
        );
        if self.wrap.is_some() {
            let _ = write!(text, "[[cord]]\ngroup = \"wrap\"\nof = \"cord-{at}\"\ncount = 1\n\n");
        }
        if self.row {
            let _ = write!(text, "[[cord]]\ngroup = \"leader\"\nof = \"cord-{at}\"\ncount = 1\n\n");
        }
        text
    }

    fn optional_steps(&self, at: usize) -> String {
        let mut text = String::new();
        if self.bead {
            let _ = write!(text, "[[step]]\nthread = \"bead-{at}\"\nlegs-each = 4\n{BOTH}");
        }
        if self.row {
            text += "[[step]]\nknot = \"double-half-hitch\"\nhang = [\"leader\"]\nworking = [\"worker\", \"filler\"]\n\
                     core = [\"leader\"]\n\n";
        }
        if let Some(times) = self.net {
            let _ = write!(
                text,
                "[[step]]\nknot = \"square\"\ntimes = {times}\ncolumns = {}\nworking = [\"worker\", \"filler\"]\n\
                 core = [\"worker\", \"filler\"]\nshare = \"even\"\n\n",
                self.arms
            );
        }
        if let Some(turns) = self.wrap {
            let _ = write!(
                text,
                "[[step]]\nknot = \"gathering-wrap\"\nworking = [\"wrap\"]\ncore = [\"worker\", \"filler\"]\n\
                 parameters = {{ turns = {turns} }}\n\n"
            );
        }
        text
    }
}

/// Both leg sets of the arms.
const BOTH: &str = "legs = [\"worker\", \"filler\"]\n\n";

impl Order {
    pub(crate) fn text(&self, rates: &Rates) -> String {
        let mut text = format!(
            "[commission]\ntitle = \"Random order\"\nclient = \"A client\"\nrush = {}\npaid = {}\n",
            self.rush,
            money(self.paid)
        );
        if let Some(deposit) = self.deposit {
            let _ = writeln!(text, "deposit = {}", percent(deposit));
        }
        for (at, (quantity, agreed)) in self.quantities.iter().zip(&self.agreed).enumerate() {
            let _ = write!(text, "\n[[item]]\ndesign = \"design-{at}\"\nquantity = {quantity}\n");
            if let Some(price) = agreed {
                let _ = writeln!(text, "price = {}", money(*price));
            }
        }
        self.lines.iter().for_each(|line| text += &line.text(rates));
        text + &self.on_the_whole()
    }

    fn on_the_whole(&self) -> String {
        let mut text = String::new();
        match self.discount {
            Some(Discount::Rate(tenths)) => {
                let _ = write!(text, "\n[discount]\nrate = {}\n", percent(tenths));
            }
            Some(Discount::Amount(cents)) => {
                let _ = write!(text, "\n[discount]\namount = {}\n", money(cents));
            }
            None => {}
        }
        if let Some(cents) = self.allowance {
            let _ = write!(text, "\n[[allowance]]\ntext = \"Off\"\namount = {}\n", money(cents));
        }
        if let Some(cents) = self.charge {
            let _ = write!(text, "\n[[charge]]\ntext = \"On\"\namount = {}\n", money(cents));
        }
        text
    }
}

impl Line {
    fn text(&self, rates: &Rates) -> String {
        let tax = match self.tax {
            _ if rates.scheme == "not-registered" => String::new(),
            Some(tenths) => format!("tax = {}\n", percent(tenths)),
            None => "exempt = true\n".to_owned(),
        };
        format!(
            "\n[[line]]\ntext = \"Line\"\nquantity = {}\nunit-price = \"{}.{:05}\"\ncost = {}\n{tax}",
            self.quantity,
            self.unit_price / 100_000,
            self.unit_price % 100_000,
            money(self.cost)
        )
    }
}
