//! The knots at hand, and where and with what one of them is tied.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use reeve_catalogue::shape::Shape;
use reeve_catalogue::{Catalogue, Core, Knot, Setting, with_article};
use reeve_costing::rates::Rates;
use reeve_measure::{Length, bound};
use reeve_pages::chart::{Charted, Sheet, chart_page, chart_sheet};
use reeve_pages::printed::{Format, LayOut, Printed, printed};
use reeve_pages::{Form, OwnTemplate, Words};
use reeve_reading::{Fault, Figure, nearest};
use reeve_shop::{Answer, Folder, read_knot};

use crate::failure::Failure;
use crate::forms::WhichShop;
use crate::layout::PageLayout;
use crate::opening::open;
use crate::sheets::{own_templates, words_of};

/// The knots at hand, and what their pages are made with.
pub(crate) struct Shelf {
    pub(crate) catalogue: Catalogue,
    layout: PageLayout,
    words: Words,
    rates: Option<Rates>,
}

impl Shelf {
    /// The knots of a shop, or the program's own alone where there is no shop and none was named.
    pub(crate) fn open(shop: &WhichShop) -> Result<Self, Failure> {
        let nowhere = shop.folder.is_none() && !shop.demo && Folder::find(Path::new(".")).is_err();
        if nowhere {
            return Self::with(Catalogue::embedded(), Vec::new(), None);
        }
        let Answer { value: shop, mut faults } = open(shop)?;
        let own = own_templates(&shop, &mut faults);
        if faults.iter().any(Fault::is_error) {
            return Err(Failure::Input(faults.into()));
        }
        Self::with(shop.catalogue().clone(), own, shop.rates().cloned())
    }

    fn with(catalogue: Catalogue, own: Vec<OwnTemplate>, rates: Option<Rates>) -> Result<Self, Failure> {
        let words = words_of(rates.as_ref())?;
        Ok(Self { catalogue, layout: PageLayout::new(own, words.phrases()), words, rates })
    }

    /// The knots of the starter shop, with pages laid out otherwise.
    pub(crate) fn sample(layout: PageLayout) -> Result<Self, Failure> {
        let shop = open(&WhichShop::starter())?.value;
        let rates = shop.rates().cloned();
        Ok(Self { catalogue: shop.catalogue().clone(), layout, words: words_of(rates.as_ref())?, rates })
    }

    /// How its pages are worded.
    pub(crate) fn words(&self) -> &Words {
        &self.words
    }

    /// Finds a knot by a word, or says which was meant.
    pub(crate) fn find(&self, word: &str) -> Result<&Knot, Failure> {
        self.catalogue.find(word).map(AsRef::as_ref).ok_or_else(|| {
            let near = nearest(word, self.catalogue.words()).map(|near| format!("did you mean `{near}`?"));
            Failure::input(
                format!("no knot is called `{word}`"),
                near.unwrap_or_else(|| "`reeve knots list` shows them all".to_owned()),
            )
        })
    }

    pub(crate) fn of_kind<'a>(&'a self, kind: Option<&'a str>) -> impl Iterator<Item = &'a Knot> {
        let knots = self.catalogue.iter().map(AsRef::as_ref);
        knots.filter(move |knot: &&Knot| kind.is_none_or(|kind| knot.kind.word() == kind))
    }

    pub(crate) fn sheet(&self, title: &str) -> Sheet {
        Sheet::new(self.rates.as_ref(), title)
    }

    /// The shape of a knot; of one that is made of others, that of the first of them.
    pub(crate) fn shape(&self, knot: &Knot) -> Result<Option<Shape>, Failure> {
        let made_of = knot.parts.first().filter(|_| knot.path.is_none()).map_or(knot, AsRef::as_ref);
        match self.catalogue.shape(made_of) {
            (shape, faults) if faults.is_empty() => Ok(shape),
            (_, faults) => Err(Failure::Input(faults.into())),
        }
    }

    /// The shape of a knot that is to be drawn alone.
    pub(crate) fn shape_to_draw(&self, knot: &Knot) -> Result<Shape, Failure> {
        self.shape(knot)?.ok_or_else(|| {
            Failure::input(
                format!("{} has no drawing yet", with_article(&knot.title)),
                match &knot.path {
                    Some(_) => format!("`reeve knots tighten {} --keep` pulls it tight and draws it", knot.name),
                    None if knot.computed.is_some() => "its library says what it takes, not how it looks".to_owned(),
                    None => "add a [path] to its file, as in `reeve knots tighten --help`".to_owned(),
                },
            )
        })
    }

    /// The style of drawings.
    pub(crate) fn style(&self) -> Result<String, Failure> {
        self.layout.fill("drawing.css", Form::Html, &BTreeMap::<&str, &str>::new())
    }

    /// What its pages are laid out by.
    pub(crate) fn into_layout(self) -> PageLayout {
        self.layout
    }

    /// A result in a format.
    pub(crate) fn printed(&self, result: &impl Printed, format: Format) -> Result<String, Failure> {
        printed(result, format, &self.layout)
    }

    /// The chart of some knots, for cord of so many millimetres.
    pub(crate) fn chart(&self, cord: f64, knots: &[Charted<'_>]) -> Result<String, Failure> {
        let sheet = chart_sheet(self.rates.as_ref(), &self.words);
        self.layout.page("chart", Form::Html, &chart_page(sheet, Length::mm(cord), knots, &self.words))
    }
}

/// The knot of a file, with what there is to say of it; a file with faults is refused with all of them.
pub(crate) fn knot_of_file(file: &Path) -> Result<(Arc<Knot>, Vec<Fault>), Failure> {
    let (knot, faults) = read_knot(file);
    match knot {
        Some(knot) if !faults.iter().any(Fault::is_error) => Ok((knot, faults)),
        _ => Err(Failure::Input(faults.into())),
    }
}

/// Where and with what a knot is shown.
pub(crate) struct TiedWith {
    pub(crate) cord: f64,
    pub(crate) core: Option<u32>,
    pub(crate) rod: Option<f64>,
    pub(crate) working: Option<u32>,
    pub(crate) give: f64,
    pub(crate) parameters: Vec<(String, Figure)>,
}

impl TiedWith {
    /// The values that the knot's parameters are given.
    pub(crate) fn chosen(&self, knot: &Knot) -> Result<Vec<(String, f64)>, Failure> {
        let one = |(name, figure): &(String, Figure)| {
            let value = knot.chosen(name, *figure);
            value.map(|value| (name.clone(), value)).map_err(|misfit| {
                let help = misfit.parameter_help().unwrap_or_else(|| "change --set".to_owned());
                Failure::input(misfit.to_string(), help.replace(['"'], ""))
            })
        };
        self.parameters.iter().map(one).collect()
    }
}

/// The setting asked for; what is not said is what the knot is usually tied round.
pub(crate) fn setting<'a>(knot: &Knot, tied: &TiedWith, chosen: &'a [(String, f64)]) -> Result<Setting<'a>, Failure> {
    let cord = thickness("--cord", tied.cord, &bound::CORD_DIAMETER)?;
    let core = match (tied.rod, tied.core) {
        (Some(rod), _) => Core::Rod(thickness("--rod", rod, &bound::SECTION)?),
        (None, Some(count)) => Core::Legs { count, diameter: cord },
        (None, None) => knot.usual_core(cord),
    };
    let working = tied.working.unwrap_or(knot.working.legs.0);
    Ok(Setting { cord, working, core, give: tied.give, parameters: chosen })
}

fn thickness(option: &str, mm: f64, bound: &reeve_measure::Bound) -> Result<Length, Failure> {
    if bound.holds(mm) {
        return Ok(Length::mm(mm));
    }
    Err(Failure::input(format!("{option} {mm} is out of range"), bound.to_string()))
}

pub(crate) fn read_parameters(words: &[String]) -> Result<Vec<(String, Figure)>, Failure> {
    let read = |word: &String| {
        let (name, number) = word.split_once('=')?;
        Some((name.trim().to_owned(), Figure::parse(number)?))
    };
    let parameter = |word| {
        read(word).ok_or_else(|| {
            Failure::input(format!("`{word}` is not a parameter"), "for example --set turns=12 or --set length=8cm")
        })
    };
    words.iter().map(parameter).collect()
}
