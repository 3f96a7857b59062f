//! Points sorted into cubes, so that those near a place are found without looking at all.

use glam::DVec3;
use reeve_measure::count;

/// Points by the cube that they lie in.
#[derive(Debug)]
pub(super) struct Cells {
    corner: DVec3,
    side: f64,
    /// Cubes across, down and towards the viewer.
    many: [usize; 3],
    /// Where the points of each cube begin, and of one cube more.
    starts: Vec<usize>,
    /// The numbers of the points, cube by cube.
    points: Vec<usize>,
}

impl Cells {
    /// Sorts points into cubes of this side, or of a longer one where they lie so far apart that most would be empty.
    pub(super) fn of(points: &[DVec3], side: f64) -> Self {
        const CUBES_A_POINT: f64 = 8.0;
        let (low, high) = points
            .iter()
            .fold((DVec3::INFINITY, DVec3::NEG_INFINITY), |(low, high), point| (low.min(*point), high.max(*point)));
        let most = CUBES_A_POINT * count(points.len() as u64) + 1000.0;
        let mut side = side;
        while ((high - low) / side + DVec3::ONE).floor().element_product() > most {
            side *= 2.0;
        }
        let many = whole((high - low) / side).map(|last| last + 1);
        let mut cells = Self {
            corner: low,
            side,
            many,
            starts: vec![0; many.iter().product::<usize>() + 1],
            points: vec![0; points.len()],
        };
        let cubes: Vec<usize> = points.iter().map(|point| cells.number(whole((*point - low) / side))).collect();
        for cube in &cubes {
            cells.starts[cube + 1] += 1;
        }
        for cube in 1..cells.starts.len() {
            cells.starts[cube] += cells.starts[cube - 1];
        }
        let mut next = cells.starts.clone();
        for (at, cube) in cubes.into_iter().enumerate() {
            cells.points[next[cube]] = at;
            next[cube] += 1;
        }
        cells
    }

    /// The numbers of all points within one side of a place, and of some that are further, always in the same order.
    pub(super) fn near(&self, place: DVec3) -> impl Iterator<Item = usize> {
        let from = (place - self.corner) / self.side;
        let (low, high) = (whole(from - DVec3::ONE), whole(from + DVec3::ONE));
        // A place off to one side of all cubes is near none of them, or near those of the margin.
        let beyond = (from + DVec3::ONE).min_element() < 0.0;
        let range = move |axis: usize| if beyond { 0..0 } else { low[axis]..(high[axis] + 1).min(self.many[axis]) };
        let columns = range(2).flat_map(move |through| range(0).map(move |across| (across, through)));
        columns.filter(move |_| !range(1).is_empty()).flat_map(move |(across, through)| {
            let (first, after) = (range(1).start, range(1).end);
            let from = self.starts[self.number([across, first, through])];
            let to = self.starts[self.number([across, after - 1, through]) + 1];
            self.points[from..to].iter().copied()
        })
    }

    /// Cubes are numbered down first, so that those above one another follow each other.
    fn number(&self, [across, down, through]: [usize; 3]) -> usize {
        (through * self.many[0] + across) * self.many[1] + down
    }
}

/// The whole cubes in a distance; none where it is negative.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a cast of what is out of range saturates")]
fn whole(cubes: DVec3) -> [usize; 3] {
    cubes.to_array().map(|along| along as usize)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn none_that_is_near_is_missed(
            points in prop::collection::vec(prop::array::uniform3(-5.0..5.0_f64), 1..60),
            place in prop::array::uniform3(-6.0..6.0_f64),
            side in 0.2..3.0_f64,
        ) {
            let points: Vec<DVec3> = points.into_iter().map(DVec3::from_array).collect();
            let place = DVec3::from_array(place);
            let cells = Cells::of(&points, side);
            let found: Vec<usize> = cells.near(place).collect();
            prop_assert!(found.len() <= points.len());
            for (at, point) in points.iter().enumerate() {
                prop_assert!(point.distance(place) >= side || found.contains(&at), "{at}");
            }
        }
    }
}
