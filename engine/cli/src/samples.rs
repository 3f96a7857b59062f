//! `reeve knots sample` and `reeve knots hand`: what the maker's own trials say.

use reeve_costing::hand::{Hand, OddSample};
use reeve_office::TakenDown;
use reeve_pages::Form;
use reeve_pages::hand::{SampleAdded, odd_words, sample_page};
use reeve_pages::printed::{Format, LayOut, printed};
use reeve_pages::results::HandResult;
use reeve_reading::Fault;
use reeve_shop::{Added, Answer, NewSample, Shop};

use crate::failure::{Failure, print_faults, say};
use crate::forms::WhichShop;
use crate::knot_args::SampleArgs;
use crate::layout::PageLayout;
use crate::opening::{hold, open};
use crate::output::{print, print_done};
use crate::sheets::{layout_of, words_of};
use crate::shelf::read_parameters;

/// Adds a sample to the shop's file, or only shows what it would change.
pub(crate) fn add(sample: &SampleArgs) -> Result<(), Failure> {
    let new = new_sample(sample)?;
    // Of many at once, each adds to what those before it have written.
    let _held = if sample.only_show { None } else { hold(&sample.shop)? };
    let shop = sound(open(&sample.shop)?)?;
    let taken = TakenDown::of(&shop, &new)?;
    if !sample.only_show {
        taken.keep()?;
    }
    let inside = format!("knots/{}", Added::FILE);
    let file = taken.file().map_or(inside, |file| file.display().to_string());
    let words = words_of(shop.rates())?;
    let added = SampleAdded {
        file: &file,
        is_written: !sample.only_show,
        lines: &taken.added.lines,
        sample: &taken.added.sample,
    };
    let shown = sample_page(added, (&taken.before, &taken.added.hand), taken.pace, &words)
        .map_err(|error| Fault::of(&error))?;
    let shown = layout_of(&shop, &words).page("sample", Form::Text, &shown)?;
    if let Some(odd) = taken.odd() {
        say(&format!("look: {}", odd_words(odd, &words)));
    }
    if sample.only_show {
        return print(&shown);
    }
    print_done(&shown);
    Ok(())
}

/// What a sample of the starter shop changes, and hands that know nothing and something.
pub(crate) fn sample(layout: PageLayout) -> Result<PageLayout, Failure> {
    let shop = open(&WhichShop::starter())?.value;
    let new = NewSample {
        cord: "cotton-4-ecru".to_owned(),
        knot: "square".to_owned(),
        tied: 20,
        core: Some(2),
        rod: None,
        working: None,
        parameters: Vec::new(),
        before: "150 cm".to_owned(),
        after: "30 cm".to_owned(),
        made: "28 cm".to_owned(),
        minutes: Some(6.0),
        on: None,
        note: Some("Tied tight.".to_owned()),
    };
    let added = shop.with_sample(&new).map_err(|faults| Failure::Input(faults.into()))?;
    let before = Hand::default();
    let words = words_of(shop.rates())?;
    let shown =
        SampleAdded { file: "knots/samples.toml", is_written: false, lines: &added.lines, sample: &added.sample };
    let shown = sample_page(shown, (&before, &added.hand), 1.0, &words)
        .map_err(|misfit| Failure::System(misfit.to_string()))?;
    layout.page("sample", Form::Text, &shown)?;
    for hand in [&before, &added.hand] {
        let odd: Vec<(&str, &OddSample)> = hand.odd.iter().map(|odd| ("knots/samples.toml:1", odd)).collect();
        printed(&HandResult { hand, odd: &odd, words: &words }, Format::Text, &layout)?;
    }
    Ok(layout)
}

fn new_sample(sample: &SampleArgs) -> Result<NewSample, Failure> {
    Ok(NewSample {
        cord: sample.cord.clone(),
        knot: sample.knot.clone(),
        tied: sample.tied,
        core: sample.core,
        rod: sample.rod.clone(),
        working: sample.working,
        parameters: read_parameters(&sample.parameters)?,
        before: sample.before.clone(),
        after: sample.after.clone(),
        made: sample.made.clone(),
        minutes: sample.minutes,
        on: sample.on,
        note: sample.note.clone(),
    })
}

/// A shop without faults.
fn sound(Answer { value: shop, faults }: Answer<Shop>) -> Result<Shop, Failure> {
    if faults.iter().any(Fault::is_error) {
        return Err(Failure::Input(faults.into()));
    }
    print_faults(&faults.into());
    Ok(shop)
}

/// Shows what the samples of a shop say.
pub(crate) fn hand(shop: &WhichShop, format: Format) -> Result<(), Failure> {
    let shop = sound(open(shop)?)?;
    let hand = shop.basis().map(|basis| basis.hand.clone()).unwrap_or_default();
    let words = words_of(shop.rates())?;
    let layout = layout_of(&shop, &words);
    let odd: Vec<(&str, &OddSample)> = hand.odd.iter().map(|odd| (shop.place_of_sample(odd.at), odd)).collect();
    print(&printed(&HandResult { hand: &hand, odd: &odd, words: &words }, format, &layout)?)
}

/// Names the samples that are not counted.
pub(crate) fn name_odd(shop: &Shop) -> Result<(), Failure> {
    let words = words_of(shop.rates())?;
    let hand = shop.basis().map(|basis| &basis.hand);
    for odd in hand.into_iter().flat_map(|hand| &hand.odd) {
        say(&format!("look: {}: {}", shop.place_of_sample(odd.at), odd_words(odd, &words)));
    }
    for at in hand.into_iter().flat_map(|hand| &hand.odd_works) {
        if let Some(work) = shop.works().get(*at) {
            say(&format!("look: {} is not counted until others bear it out", work.of()));
        }
    }
    Ok(())
}
