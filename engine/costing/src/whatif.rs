//! What if: the shop's inputs changed, one or several, and what each moves.

use std::mem::discriminant;
use std::sync::Arc;

use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};

use crate::basis::Basis;
use crate::cost::CostError;
use crate::money::fraction;
use crate::piece::Piece;
use crate::pricing::PriceError;
use crate::rates::{Overhead, Rates};
use crate::single_piece::SinglePiece;
use crate::store::{Cord, PutUp};
use crate::takeoff::{TakeOff, take_off};

/// An input of the sums that may be changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Input {
    /// What cord costs: the cord of a name, or all.
    Cord(Option<String>),
    /// The wage of a bench hour.
    Wage,
    /// The rate of overhead: of a bench hour, or in per cent, as the shop lays it on.
    Overhead,
    /// What selling takes.
    Fees,
    /// The maker's time against the catalogue's.
    Pace,
}

impl Input {
    /// Those that every design answers to, with the word each is called by.
    pub const WORDS: &'static [(&'static str, Self)] = &[
        ("cord", Self::Cord(None)),
        ("wage", Self::Wage),
        ("overhead", Self::Overhead),
        ("fees", Self::Fees),
        ("pace", Self::Pace),
    ];

    /// The word of the input; that of cord for one cord as well.
    pub fn word(&self) -> &'static str {
        let is_of_it = |(_, known): &&(&str, Self)| discriminant(known) == discriminant(self);
        Self::WORDS.iter().find(is_of_it).map_or("", |(word, _)| *word)
    }
}

/// How far an input is changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// So many per cent more, or less if negative; above -100.
    Percent(Decimal),
    /// To a value: money for a wage and for overhead of an hour; per cent for other overhead and for all fee rates
    /// together; money for a metre of cord; a plain number for the pace. Not below zero.
    To(Decimal),
}

impl By {
    fn on(self, value: Decimal) -> Decimal {
        match self {
            Self::Percent(percent) => value * (Decimal::ONE + fraction(percent)),
            Self::To(value) => value,
        }
    }
}

/// An input and how far it is changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// Which.
    pub input: Input,
    /// How far.
    pub by: By,
}

/// Rates and hand with some inputs changed, in their order.
fn changed_basis(basis: &Basis, changes: &[Change]) -> Basis {
    let mut basis = basis.clone();
    for Change { input, by } in changes {
        let rates = &mut basis.rates;
        match input {
            // Cords belong to pieces, not to rates.
            Input::Cord(_) => {}
            Input::Wage => rates.wage = by.on(rates.wage),
            Input::Overhead => {
                rates.overhead = match rates.overhead {
                    Overhead::PerHour(rate) => Overhead::PerHour(by.on(rate)),
                    Overhead::OfLabour(percent) => Overhead::OfLabour(by.on(percent)),
                    Overhead::OfPrimeCost(percent) => Overhead::OfPrimeCost(by.on(percent)),
                }
            }
            Input::Fees => change_fees(rates, *by),
            Input::Pace => change_pace(&mut basis, *by),
        }
    }
    basis
}

/// A percentage changes rates and fixed fees alike; a value is what all rates together come to.
fn change_fees(rates: &mut Rates, by: By) {
    let in_all: Decimal = rates.fees.iter().map(|fee| fee.rate).sum();
    for fee in &mut rates.fees {
        match by {
            By::Percent(_) => (fee.rate, fee.fixed) = (by.on(fee.rate), by.on(fee.fixed)),
            By::To(_) if in_all.is_zero() => {}
            By::To(value) => fee.rate = fee.rate / in_all * value,
        }
    }
}

/// Samples measure the pace; a percentage changes what they say, and a value stands in its place.
fn change_pace(Basis { rates, hand }: &mut Basis, by: By) {
    let bench = &mut rates.bench;
    let paced = |pace: f64| by.on(Decimal::from_f64(pace).unwrap_or_default()).to_f64().unwrap_or(pace);
    bench.pace = paced(bench.pace);
    match (by, &mut hand.pace) {
        (By::Percent(_), Some(known)) => {
            (known.pace.mean, known.pull.mean) = (paced(known.pace.mean), paced(known.pull.mean));
        }
        (By::To(_), known) => *known = None,
        (By::Percent(_), None) => {}
    }
}

/// A piece of cord at changed prices; the same piece where no cord is changed.
fn changed_piece(piece: &Arc<Piece>, changes: &[Change]) -> Arc<Piece> {
    let of_cord = |change: &&Change| matches!(change.input, Input::Cord(_));
    let changes: Vec<&Change> = changes.iter().filter(of_cord).collect();
    if changes.is_empty() {
        return Arc::clone(piece);
    }
    let priced = |cord: &Arc<Cord>| {
        let of_it = |change: &&&Change| matches!(&change.input, Input::Cord(name) if name.as_ref().is_none_or(|name| *name == cord.name));
        changes.iter().filter(of_it).fold(Arc::clone(cord), |cord, change| Arc::new(repriced(&cord, change.by)))
    };
    Arc::new(piece.with_cords(&priced))
}

fn repriced(cord: &Cord, by: By) -> Cord {
    let put_up = |put_up: &PutUp| PutUp {
        price: match by {
            By::Percent(_) => by.on(put_up.price),
            By::To(of_a_metre) => of_a_metre * Decimal::from(put_up.length_mm) / Decimal::ONE_THOUSAND,
        },
        ..put_up.clone()
    };
    Cord { put_ups: cord.put_ups.iter().map(put_up).collect(), ..cord.clone() }
}

/// A piece with some inputs changed: what it is tied of, what making it takes, and what it is reckoned by.
#[derive(Debug, Clone, PartialEq)]
pub struct Changed {
    /// The piece, of cord at changed prices.
    pub piece: Arc<Piece>,
    /// What making it takes; taken off anew only where pace or cord is changed.
    pub made: Arc<TakeOff>,
    /// Rates and hand.
    pub basis: Basis,
}

impl Changed {
    /// Changes the inputs, in their order.
    ///
    /// # Errors
    /// [`PriceError`] when the piece can't be taken off so.
    pub fn of(piece: &Arc<Piece>, made: &Arc<TakeOff>, basis: &Basis, changes: &[Change]) -> Result<Self, PriceError> {
        let (piece, basis) = (changed_piece(piece, changes), changed_basis(basis, changes));
        let same_work = changes.iter().all(|change| !matches!(change.input, Input::Pace | Input::Cord(_)));
        let made = if same_work {
            Arc::clone(made)
        } else {
            let taken = take_off(&piece, &basis);
            Arc::new(taken.map_err(|faults| PriceError::Cost(CostError::Piece(0, faults)))?)
        };
        Ok(Self { piece, made, basis })
    }
}

/// A piece costed with some inputs changed, and what it is then reckoned by.
///
/// # Errors
/// [`PriceError`] when it can't be costed so or the shop's aim can't be reached.
pub fn with_changes(
    piece: &Arc<Piece>,
    made: &Arc<TakeOff>,
    basis: &Basis,
    changes: &[Change],
) -> Result<(SinglePiece, Basis), PriceError> {
    let changed = Changed::of(piece, made, basis, changes)?;
    Ok((SinglePiece::of(&changed.made, &changed.basis)?, changed.basis))
}

/// What an input moves when it alone is changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Effect {
    /// The input.
    pub input: Input,
    /// What the margin gains, at the same price, when the input is higher; negative where it loses.
    pub higher: Decimal,
    /// The same when it is lower by as much.
    pub lower: Decimal,
}

/// What each input moves when it alone is changed by so many per cent and the price stays: what loses the most first.
///
/// # Errors
/// [`PriceError`] when it can't be costed with a change.
pub fn effects(
    piece: &Arc<Piece>,
    made: &Arc<TakeOff>,
    basis: &Basis,
    price: Decimal,
    percent: Decimal,
) -> Result<Vec<Effect>, PriceError> {
    let before = SinglePiece::of(made, basis)?.sold_at(price, &basis.rates).margin;
    let mut all = Vec::new();
    for (_, input) in Input::WORDS {
        let moved = |percent: Decimal| -> Result<Decimal, PriceError> {
            let change = Change { input: input.clone(), by: By::Percent(percent) };
            let (alone, changed) = with_changes(piece, made, basis, &[change])?;
            Ok(alone.sold_at(price, &changed.rates).margin - before)
        };
        all.push(Effect { input: input.clone(), higher: moved(percent)?, lower: moved(-percent)? });
    }
    // Equal ones stay in the order of the list.
    all.sort_by_key(|effect| effect.higher);
    Ok(all)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use proptest::prelude::*;
    use reeve_measure::Time;

    use super::*;
    use crate::piece::Task;
    use crate::rates::{Fee, FeeBase, TaxScheme};
    use crate::risk::ThreePoint;
    use crate::sample::{basis, hang, piece, rates, tail};

    fn small() -> Arc<Piece> {
        let mut piece = piece(2, vec![hang(0, &[0, 1]), tail(20.0, &[0, 1])]);
        piece.tasks = vec![Task {
            title: "wire".to_owned(),
            time: ThreePoint::certain(Time::hours(1.0)),
            once: false,
            cost: Decimal::new(15, 1),
        }];
        Arc::new(piece)
    }

    fn shop() -> Basis {
        let fee = Fee { name: "card".to_owned(), rate: Decimal::TWO, fixed: Decimal::new(30, 2), on: FeeBase::Gross };
        basis(Rates { fees: vec![fee], ..rates(TaxScheme::Net) })
    }

    fn made(piece: &Piece, basis: &Basis) -> Arc<TakeOff> {
        Arc::new(take_off(piece, basis).unwrap())
    }

    /// The margin at 80.00.
    fn margin(changes: &[Change]) -> Decimal {
        let (piece, basis) = (small(), shop());
        let (alone, changed) = with_changes(&piece, &made(&piece, &basis), &basis, changes).unwrap();
        alone.sold_at(Decimal::from(80), &changed.rates).margin
    }

    fn change(input: &Input, by: By) -> Change {
        Change { input: input.clone(), by }
    }

    #[test]
    fn nothing_changed_changes_nothing() {
        let none: Vec<Change> =
            Input::WORDS.iter().map(|(_, input)| change(input, By::Percent(Decimal::ZERO))).collect();
        assert_eq!(margin(&none), margin(&[]));
        let (piece, basis) = (small(), shop());
        assert_eq!(changed_basis(&basis, &none), basis);
        assert_eq!(changed_piece(&piece, &none), piece);
    }

    #[test]
    fn values_are_put_in_place() {
        let to = |input: &Input, value: i64| vec![change(input, By::To(Decimal::from(value)))];
        let basis = shop();
        assert_eq!(changed_basis(&basis, &to(&Input::Wage, 31)).rates.wage, Decimal::from(31));
        assert_eq!(changed_basis(&basis, &to(&Input::Overhead, 9)).rates.overhead, Overhead::PerHour(Decimal::from(9)));
        assert_eq!(changed_basis(&basis, &to(&Input::Fees, 5)).rates.fees[0].rate, Decimal::from(5));
        assert!((changed_basis(&basis, &to(&Input::Pace, 2)).rates.bench.pace - 2.0).abs() < 1e-12);
        // 100 m at 0.50 a metre.
        let cord = changed_piece(&small(), &[change(&Input::Cord(None), By::To(Decimal::new(5, 1)))]);
        assert_eq!(cord.groups[0].cord.put_ups[0].price, Decimal::from(50));
        let other = Input::Cord(Some("jute".to_owned()));
        assert_eq!(changed_piece(&small(), &to(&other, 1)), small());
    }

    #[test]
    fn effects_are_what_changing_one_by_one_does() {
        let (piece, basis) = (small(), shop());
        let all = effects(&piece, &made(&piece, &basis), &basis, Decimal::from(80), Decimal::TEN).unwrap();
        assert!(all.windows(2).all(|pair| pair[0].higher <= pair[1].higher));
        for effect in all {
            let alone = |percent| margin(&[change(&effect.input, By::Percent(percent))]) - margin(&[]);
            assert_eq!((effect.higher, effect.lower), (alone(Decimal::TEN), alone(-Decimal::TEN)));
        }
    }

    proptest! {
        #[test]
        fn raising_a_cost_never_raises_the_margin_at_a_price(which in 0_usize..5, percent in 0_i64..300, more in 0_i64..300) {
            let raised = |percent: i64| margin(&[change(&Input::WORDS[which].1, By::Percent(Decimal::from(percent)))]);
            prop_assert!(raised(percent + more) <= raised(percent));
        }

        #[test]
        fn changes_of_several_go_together(wage in -50_i64..100, fees in -50_i64..100) {
            let (wage, fees) = (
                change(&Input::Wage, By::Percent(Decimal::from(wage))),
                change(&Input::Fees, By::Percent(Decimal::from(fees))),
            );
            let (one, other) = (margin(std::slice::from_ref(&wage)), margin(std::slice::from_ref(&fees)));
            // Wage and fees do not touch one another, so what they move adds up.
            prop_assert_eq!(margin(&[wage, fees]) - margin(&[]), (one - margin(&[])) + (other - margin(&[])));
        }
    }
}
