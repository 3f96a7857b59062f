//! Observations of one knot, gathered into sums: what they say of its own factor, and of what all knots share.
//!
//! An observation is a logarithm `y = f(shared) + factor + noise`. With `r` what `f` leaves unexplained, `q` how fast `f`
//! changes with the shared figures and `v` the variance of the noise, everything follows from sums of `1/v`, `r/v`, `q/v` and
//! their products: one observation is taken out of them again without looking at the others.

use super::{Estimate, square};

/// How much what a guess leaves unexplained weighs in what knots share: a tenth of what a trusted figure's would.
const GUESS_WEIGHS: f64 = 0.1;

/// One observation, at some value of the shared figures.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    pub(super) left: f64,
    pub(super) slope: [f64; 2],
    pub(super) variance: f64,
}

/// Sums over observations, each weighed by 1 / variance.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct WeightedSums {
    count: u32,
    weight: f64,
    left: f64,
    left_square: f64,
    slope: [f64; 2],
    left_slope: [f64; 2],
    slopes: Symmetric,
}

/// A symmetric matrix of two rows.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Symmetric {
    pub(super) aa: f64,
    pub(super) ab: f64,
    pub(super) bb: f64,
}

impl Symmetric {
    pub(super) fn plus(self, other: Self, times: f64) -> Self {
        Self { aa: self.aa + times * other.aa, ab: self.ab + times * other.ab, bb: self.bb + times * other.bb }
    }

    /// A column times itself.
    pub(super) fn square([a, b]: [f64; 2]) -> Self {
        Self { aa: a * a, ab: a * b, bb: b * b }
    }

    pub(super) fn inverse(self) -> Self {
        let determinant = self.aa * self.bb - self.ab * self.ab;
        Self { aa: self.bb / determinant, ab: -self.ab / determinant, bb: self.aa / determinant }
    }

    pub(super) fn of(self, [a, b]: [f64; 2]) -> [f64; 2] {
        [self.aa * a + self.ab * b, self.ab * a + self.bb * b]
    }

    /// The variance along a direction.
    pub(super) fn along(self, direction: [f64; 2]) -> f64 {
        dot(direction, self.of(direction))
    }
}

pub(super) fn dot([a, b]: [f64; 2], [c, d]: [f64; 2]) -> f64 {
    a * c + b * d
}

/// What observations say of the shared figures: which way they pull, and how much they know.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Push {
    pub(super) pull: [f64; 2],
    pub(super) known: Symmetric,
}

impl Push {
    pub(super) fn plus(self, other: Self, times: f64) -> Self {
        let pull = [self.pull[0] + times * other.pull[0], self.pull[1] + times * other.pull[1]];
        Self { pull, known: self.known.plus(other.known, times) }
    }
}

impl WeightedSums {
    pub(super) fn of(seen: impl Iterator<Item = Seen>) -> Self {
        seen.fold(Self::default(), Self::with)
    }

    pub(super) fn with(self, one: Seen) -> Self {
        Self { count: self.count + 1, ..self.moved(one, 1.0) }
    }

    /// The sums as if one of the observations had not been made.
    pub(super) fn without(self, one: Seen) -> Self {
        // Of the last one the differences would leave nothing but errors of rounding.
        if self.count <= 1 { Self::default() } else { Self { count: self.count - 1, ..self.moved(one, -1.0) } }
    }

    fn moved(self, one: Seen, times: f64) -> Self {
        let weight = times / one.variance;
        let [a, b] = one.slope;
        Self {
            count: self.count,
            weight: self.weight + weight,
            left: self.left + weight * one.left,
            left_square: self.left_square + weight * one.left * one.left,
            slope: [self.slope[0] + weight * a, self.slope[1] + weight * b],
            left_slope: [self.left_slope[0] + weight * a * one.left, self.left_slope[1] + weight * b * one.left],
            slopes: self.slopes.plus(Symmetric::square(one.slope), weight),
        }
    }

    /// The logarithm of the knot's own factor once the shared figures have moved on by so much: shrunk towards nothing.
    pub(super) fn factor(&self, sd: f64, moved: [f64; 2]) -> Estimate {
        let weight = square(sd).recip() + self.weight;
        Estimate { mean: (self.left - dot(self.slope, moved)) / weight, sd: weight.sqrt().recip() }
    }

    /// The square of what is left, weighed, less what the knot's own factor takes up of it.
    pub(super) fn misfit(&self, trust: &Trust) -> f64 {
        match trust {
            _ if self.count == 0 => 0.0,
            Trust::Firm(sd) => self.left_square - self.left * self.left * own_share(*sd, self.weight),
            Trust::Guess { .. } => GUESS_WEIGHS * square(self.mean_left()) / self.mean_variance(trust),
        }
    }

    /// What the observations say of the shared figures.
    pub(super) fn push(&self, trust: &Trust) -> Push {
        match trust {
            _ if self.count == 0 => Push::default(),
            Trust::Firm(sd) => {
                let own = own_share(*sd, self.weight);
                let pull = [0, 1].map(|at| self.left_slope[at] - self.slope[at] * self.left * own);
                Push { pull, known: self.slopes.plus(Symmetric::square(self.slope), -own) }
            }
            Trust::Guess { most, .. } => self.guessed(trust, *most),
        }
    }

    /// Of a guess only the mean of all its observations counts, for a tenth, and for no more than moves a shared figure
    /// by so much.
    fn guessed(&self, trust: &Trust, most: [f64; 2]) -> Push {
        let slope = self.slope.map(|sum| sum / self.weight);
        let known = GUESS_WEIGHS / self.mean_variance(trust);
        let full = [0, 1].map(|at| known * self.mean_left() * slope[at]);
        let within = |at: usize| if full[at].abs() > most[at] { most[at] / full[at].abs() } else { 1.0 };
        let held = within(0).min(within(1));
        let known = Symmetric::default().plus(Symmetric::square(slope), known * held);
        Push { pull: full.map(|pull| pull * held), known }
    }

    fn mean_left(&self) -> f64 {
        self.left / self.weight
    }

    fn mean_variance(&self, trust: &Trust) -> f64 {
        square(trust.sd()) + self.weight.recip()
    }
}

/// The share of a group's mean that its own factor takes up: all of it where nothing is known of the factor, none where it
/// has none. As a part of one unit of weight.
fn own_share(sd: f64, weight: f64) -> f64 {
    let variance = sd * sd;
    variance / (1.0 + variance * weight)
}

/// How far the figure that observations are held against is to be trusted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Trust {
    /// Its own factor strays by so much, as a logarithm; by nothing where there is no factor.
    Firm(f64),
    /// It strays by so much, and its observations pull at each shared figure by no more than `most`.
    Guess { sd: f64, most: [f64; 2] },
}

impl Trust {
    pub(super) fn sd(&self) -> f64 {
        match self {
            Self::Firm(sd) | Self::Guess { sd, .. } => *sd,
        }
    }
}
