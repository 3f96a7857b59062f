//! The four quantities of the trade: length, mass, time and linear density.

use std::cmp::Ordering;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Sub};

/// Millimetres in one inch, exact by the international yard and pound agreement of 1959.
const MM_PER_INCH: f64 = 25.4;
/// Inches in one foot, by definition.
const INCHES_PER_FOOT: f64 = 12.0;
/// Grams in one avoirdupois pound, exact by the same agreement.
const G_PER_POUND: f64 = 453.592_37;
/// Ounces in one pound, by definition.
const OUNCES_PER_POUND: f64 = 16.0;

/// A count as a plain number.
///
/// Counts are bounded far below 2^53, so none is changed by it.
#[allow(clippy::cast_precision_loss, reason = "counts are bounded far below 2^53")]
pub const fn count(count: u64) -> f64 {
    count as f64
}

macro_rules! quantity {
    ($(#[$about:meta])* $name:ident) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            /// Compares by size; a total order.
            pub fn total_cmp(&self, other: &Self) -> Ordering {
                self.0.total_cmp(&other.0)
            }

            /// The greater of the two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The lesser of the two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
                amounts.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity!(
    /// A length. Kept in millimetres.
    ///
    /// ```
    /// use reeve_measure::Length;
    /// assert_eq!(Length::cm(9.0).as_mm(), 90.0);
    /// assert_eq!((Length::m(1.0) / Length::cm(20.0)), 5.0);
    /// ```
    Length
);

quantity!(
    /// A mass. Kept in grams.
    Mass
);

quantity!(
    /// A span of working time. Kept in seconds.
    Time
);

quantity!(
    /// Mass for each length of cord, the tex system's quantity. Kept in grams a metre (kilotex).
    LinearDensity
);

impl Length {
    /// From millimetres.
    pub const fn mm(mm: f64) -> Self {
        Self(mm)
    }

    /// From centimetres.
    pub const fn cm(cm: f64) -> Self {
        Self(cm * 10.0)
    }

    /// From metres.
    pub const fn m(m: f64) -> Self {
        Self(m * 1000.0)
    }

    /// From inches of 25.4 mm.
    pub const fn inches(inches: f64) -> Self {
        Self(inches * MM_PER_INCH)
    }

    /// From feet of 12 in.
    pub const fn feet(feet: f64) -> Self {
        Self(feet * MM_PER_INCH * INCHES_PER_FOOT)
    }

    /// In millimetres.
    pub const fn as_mm(self) -> f64 {
        self.0
    }

    /// In centimetres.
    pub const fn as_cm(self) -> f64 {
        self.0 / 10.0
    }

    /// In metres.
    pub const fn as_m(self) -> f64 {
        self.0 / 1000.0
    }

    /// The length rounded up to a whole number of steps; a step of zero leaves it as it is.
    ///
    /// A surplus under a thousandth of a millimetre is the noise of the sum, not a reason for a step more.
    #[must_use]
    pub fn rounded_up_to(self, step: Self) -> Self {
        const NOISE_MM: f64 = 1e-3;
        if step.0 <= 0.0 {
            return self;
        }
        Self(((self.0 - NOISE_MM) / step.0).ceil().max(0.0) * step.0)
    }
}

impl Mass {
    /// From grams.
    pub const fn g(g: f64) -> Self {
        Self(g)
    }

    /// From kilograms.
    pub const fn kg(kg: f64) -> Self {
        Self(kg * 1000.0)
    }

    /// From avoirdupois pounds of 453.59237 g.
    pub const fn pounds(pounds: f64) -> Self {
        Self(pounds * G_PER_POUND)
    }

    /// From avoirdupois ounces, 16 to the pound.
    pub const fn ounces(ounces: f64) -> Self {
        Self(ounces * G_PER_POUND / OUNCES_PER_POUND)
    }

    /// In grams.
    pub const fn as_g(self) -> f64 {
        self.0
    }
}

impl Time {
    /// From seconds.
    pub const fn s(s: f64) -> Self {
        Self(s)
    }

    /// From minutes.
    pub const fn minutes(minutes: f64) -> Self {
        Self(minutes * 60.0)
    }

    /// From hours.
    pub const fn hours(hours: f64) -> Self {
        Self(hours * 3600.0)
    }

    /// In seconds.
    pub const fn as_s(self) -> f64 {
        self.0
    }

    /// In minutes.
    pub const fn as_minutes(self) -> f64 {
        self.0 / 60.0
    }

    /// In hours.
    pub const fn as_hours(self) -> f64 {
        self.0 / 3600.0
    }
}

impl LinearDensity {
    /// From grams a metre.
    pub const fn g_per_m(g_per_m: f64) -> Self {
        Self(g_per_m)
    }

    /// In grams a metre.
    pub const fn as_g_per_m(self) -> f64 {
        self.0
    }

    /// What a length of it weighs.
    pub fn mass_of(self, length: Length) -> Mass {
        Mass::g(self.0 * length.as_m())
    }

    /// The length that a mass of it has.
    pub fn length_of(self, mass: Mass) -> Length {
        Length::m(mass.as_g() / self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-9, "{a} is not {b}");
    }

    #[test]
    fn units_convert_by_their_definitions() {
        close(Length::inches(1.0).as_mm(), 25.4);
        close(Length::feet(1.0).as_mm(), 304.8);
        close(Length::m(1.0).as_cm(), 100.0);
        close(Mass::pounds(1.0).as_g(), 453.592_37);
        close(Mass::ounces(16.0).as_g(), Mass::pounds(1.0).as_g());
        close(Time::hours(1.5).as_minutes(), 90.0);
    }

    #[test]
    fn a_length_on_the_step_stays_on_it() {
        close(Length::cm(35.0).rounded_up_to(Length::cm(5.0)).as_cm(), 35.0);
        close(Length::cm(35.1).rounded_up_to(Length::cm(5.0)).as_cm(), 40.0);
        close(Length::cm(35.1).rounded_up_to(Length::ZERO).as_cm(), 35.1);
        // 0.1 + 0.2 in metres is a hair above 30 cm.
        let sum = Length::m(0.1) + Length::m(0.2);
        close(sum.rounded_up_to(Length::cm(5.0)).as_cm(), 30.0);
    }

    #[test]
    fn density_turns_length_into_mass_and_back() {
        let cord = LinearDensity::g_per_m(4.5);
        close(cord.mass_of(Length::m(10.0)).as_g(), 45.0);
        close(cord.length_of(Mass::g(45.0)).as_m(), 10.0);
    }
}
