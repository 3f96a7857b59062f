//! The energy of tubes in contact, and its slope.

use glam::{DVec2, DVec3, Vec3Swizzles as _};
use reeve_measure::count;

use super::contact::{line, point};
use super::pairs::Pairs;
use super::tubes::{NodeRange, Tubes};
use super::turns::{Follower, Turns};
use crate::shape::Then;

/// Stiffness that keeps the pieces of a leg even; it moves no point off its curve.
const EVENING: f64 = 0.5;

/// Which way the energy rises.
#[derive(Debug, Default)]
struct Slope {
    nodes: Vec<DVec3>,
    posts: Vec<DVec2>,
    rise: f64,
    twist: f64,
}

impl Slope {
    /// Adds to the slope of a node by way of its image some repeats further down.
    fn push_image(&mut self, tubes: &Tubes, turns: &Turns, (node, repeats): (usize, usize), push: DVec3) {
        if repeats == 0 {
            self.nodes[node] += push;
            return;
        }
        let times = count(repeats as u64);
        self.nodes[node] += turns.back(push, repeats);
        self.rise += push.y * times;
        self.twist += push.dot(turns.turning(tubes.nodes[node], repeats)) * times;
    }
}

/// The energy of tubes at one stiffness.
#[derive(Debug)]
pub(super) struct Energy {
    tubes: Tubes,
    stiffness: f64,
    spacing: f64,
    /// The strands that are like each strand.
    followers: Vec<Vec<Follower>>,
    /// Where the repeats lie in the state of now.
    turns: Turns,
    pairs: Pairs,
    slope: Slope,
    /// How long all strands are in the state of now, and how many pieces they are cut into.
    length: f64,
    piece_count: f64,
    /// The pieces of the strand that is looked at, each with its direction: kept only so as not to be asked for anew.
    pieces: Vec<(DVec3, f64)>,
}

impl Energy {
    /// Of tubes whose pieces are assumed to be so long.
    pub(super) fn new(tubes: Tubes, stiffness: f64, spacing: f64) -> Self {
        let pieces = tubes.runs.iter().map(|run| if run.then == Then::Pulled { run.count - 1 } else { run.count });
        Self {
            length: 0.0,
            piece_count: count(pieces.sum::<usize>().max(1) as u64),
            followers: followers(&tubes),
            tubes,
            stiffness,
            spacing,
            turns: Turns::default(),
            pairs: Pairs::of(spacing),
            slope: Slope::default(),
            pieces: Vec::new(),
        }
    }

    /// The length that the pieces are assumed to have.
    pub(super) fn spacing(&self) -> f64 {
        self.spacing
    }

    /// Assumes another length of the pieces.
    pub(super) fn assume(&mut self, spacing: f64) {
        self.spacing = spacing;
        self.pairs = Pairs::of(spacing);
    }

    /// The mean length of a piece, in the state that was looked at last.
    pub(super) fn piece(&self) -> f64 {
        self.length / self.piece_count
    }

    pub(super) fn into_tubes(self) -> Tubes {
        self.tubes
    }

    /// All that can move, as one list of numbers: nodes, posts, rise, twist.
    pub(super) fn state(&self) -> Vec<f64> {
        let nodes = self.tubes.nodes.iter().flat_map(DVec3::to_array);
        let posts = self.tubes.posts.iter().flat_map(|post| post.at.to_array());
        nodes.chain(posts).chain([self.tubes.rise(), self.tubes.twist()]).collect()
    }

    /// Moves everything to where the list says.
    pub(super) fn take(&mut self, state: &[f64]) {
        let (nodes, rest) = state.split_at(self.tubes.nodes.len() * 3);
        for (node, at) in self.tubes.nodes.iter_mut().zip(nodes.chunks_exact(3)) {
            *node = DVec3::from_slice(at);
        }
        for (post, at) in self.tubes.posts.iter_mut().zip(rest.chunks_exact(2)) {
            post.at = DVec2::from_slice(at);
        }
        if let (Some(repeat), [.., rise, twist]) = (&mut self.tubes.repeat, state) {
            (repeat.rise, repeat.twist) = (*rise, *twist);
        }
    }

    /// The energy at a state; its slope is written into `slope`.
    pub(super) fn at(&mut self, state: &[f64], slope: &mut [f64]) -> f64 {
        self.take(state);
        self.pairs.find(&self.tubes);
        self.turns = Turns::of(&self.tubes, self.pairs.furthest().max(1));
        self.slope.nodes.clear();
        self.slope.nodes.resize(self.tubes.nodes.len(), DVec3::ZERO);
        self.slope.posts.clear();
        self.slope.posts.resize(self.tubes.posts.len(), DVec2::ZERO);
        (self.slope.rise, self.slope.twist) = (-self.tubes.pull, 0.0);
        self.length = 0.0;
        let tension =
            (0..self.tubes.runs.len()).map(|run| self.tension(run)).sum::<f64>() - self.tubes.pull * self.tubes.rise();
        let all = tension + self.contact() + self.on_posts() + self.between_posts();
        (0..self.tubes.runs.len()).for_each(|run| self.keep_alike(run));
        self.write(slope);
        all
    }

    /// Gives the strands that are like this one the same slope, the mean of all.
    fn keep_alike(&mut self, leader: usize) {
        let followers = &self.followers[leader];
        if followers.is_empty() {
            return;
        }
        let NodeRange { first, count: nodes, .. } = self.tubes.runs[leader];
        let share = 1.0 / count(followers.len() as u64 + 1);
        let slopes = &mut self.slope.nodes;
        for k in 0..nodes {
            let back = |follower: &Follower| follower.back(slopes[follower.first + k]);
            let mean = (slopes[first + k] + followers.iter().map(back).sum::<DVec3>()) * share;
            slopes[first + k] = mean;
            for follower in followers {
                slopes[follower.first + k] = follower.forth(mean);
            }
        }
    }

    fn write(&mut self, slope: &mut [f64]) {
        // The ends of a pulled leg are held where they are pulled to. Pulled along one line they are free to swing
        // aside; pulled round a corner they would swing until they meet.
        for run in self.tubes.runs.iter().filter(|run| run.then == Then::Pulled) {
            let in_line = run.away[0].dot(run.away[1]).abs() > 0.9;
            for (end, away) in [run.first, run.first + run.count - 1].into_iter().zip(run.away) {
                let slope = &mut self.slope.nodes[end];
                *slope = if in_line { *slope - away * slope.dot(away) } else { DVec3::ZERO };
            }
        }
        let (nodes, rest) = slope.split_at_mut(self.tubes.nodes.len() * 3);
        for (out, node) in nodes.chunks_exact_mut(3).zip(&self.slope.nodes) {
            out.copy_from_slice(&node.to_array());
        }
        // The middle of the posts is what everything else is placed about: a knot pulled to one side would drag them along.
        let posts = &self.slope.posts;
        let drift = posts.iter().sum::<DVec2>() / count(posts.len().max(1) as u64);
        for (out, post) in rest.chunks_exact_mut(2).zip(posts) {
            out.copy_from_slice(&(*post - drift).to_array());
        }
        if let [.., rise, twist] = rest {
            *rise = if self.tubes.repeat.is_some() { self.slope.rise } else { 0.0 };
            *twist = if self.tubes.twists { self.slope.twist } else { 0.0 };
        }
    }

    /// Length of one strand under unit tension, and what keeps its pieces even.
    fn tension(&mut self, run: usize) -> f64 {
        let run = self.tubes.runs[run];
        let mut pieces = std::mem::take(&mut self.pieces);
        pieces.clear();
        let line = &self.tubes.nodes[run.first..run.first + run.count];
        pieces.extend(line.windows(2).map(|pair| piece(pair[0], pair[1])));
        let after =
            self.tubes.after(&run).map(|(node, next)| self.turns.image(self.tubes.nodes[node], usize::from(next)));
        pieces.extend(line.last().zip(after).map(|(last, after)| piece(*last, after)));
        let length: f64 = pieces.iter().map(|(_, length)| length).sum();
        let mean = length / count(pieces.len() as u64);
        let evening = EVENING / self.spacing;
        let mut uneven = 0.0;
        for (k, (along, length)) in pieces.iter().enumerate() {
            let off = length - mean;
            uneven += 0.5 * evening * off * off;
            self.pull_piece(&run, k, *along * (1.0 + evening * off));
        }
        self.pieces = pieces;
        self.length += length;
        length + uneven
    }

    fn pull_piece(&mut self, run: &NodeRange, k: usize, pull: DVec3) {
        self.slope.nodes[run.first + k] -= pull;
        if k + 1 < run.count {
            self.slope.nodes[run.first + k + 1] += pull;
        } else if let Some((node, next)) = self.tubes.after(run) {
            self.slope.push_image(&self.tubes, &self.turns, (node, usize::from(next)), pull);
        }
    }

    /// Contact between strands, images included.
    fn contact(&mut self) -> f64 {
        let weight = self.stiffness * self.spacing * self.spacing;
        let Self { tubes, turns, slope, .. } = self;
        let mut sum = 0.0;
        for pair in self.pairs.near() {
            let other = tubes.nodes[pair.second];
            let other = if pair.repeats == 0 { other } else { turns.image(other, pair.repeats) };
            let between = tubes.nodes[pair.first] - other;
            let squared = between.length_squared();
            if squared < pair.touching * pair.touching {
                let r = squared.sqrt();
                let (energy, rising) = point(r / pair.touching);
                sum += weight * energy;
                let push = between * (weight * rising / (r * pair.touching).max(f64::MIN_POSITIVE));
                slope.nodes[pair.first] += push;
                slope.push_image(tubes, turns, (pair.second, pair.repeats), -push);
            }
        }
        sum
    }

    /// Contact of strands with posts: straight lines, so that the law is summed along them in closed form.
    fn on_posts(&mut self) -> f64 {
        let weight = self.stiffness * self.spacing;
        let mut sum = 0.0;
        for (k, post) in self.tubes.posts.iter().enumerate() {
            let reach = f64::midpoint(1.0, post.diameter);
            for (node, slope_of) in self.tubes.nodes.iter().zip(&mut self.slope.nodes) {
                let between = node.xz() - post.at;
                let squared = between.length_squared();
                if squared < reach * reach {
                    let r = squared.sqrt();
                    // The cord sinks in alike, however thick the post.
                    let (energy, slope) = line(1.0 - (reach - r));
                    sum += weight * energy;
                    let push = between * (weight * slope / r.max(f64::MIN_POSITIVE));
                    *slope_of += DVec3::new(push.x, 0.0, push.y);
                    self.slope.posts[k] -= push;
                }
            }
        }
        sum
    }

    /// Contact of posts with each other, over one rise or the height of the work.
    fn between_posts(&mut self) -> f64 {
        let height = if self.tubes.repeat.is_some() { self.tubes.rise() } else { 1.0 };
        let mut sum = 0.0;
        for a in 0..self.tubes.posts.len() {
            for b in a + 1..self.tubes.posts.len() {
                let between = self.tubes.posts[a].at - self.tubes.posts[b].at;
                let reach = f64::midpoint(self.tubes.posts[a].diameter, self.tubes.posts[b].diameter);
                let r = between.length();
                if r < reach {
                    let (energy, slope) = line(1.0 - (reach - r));
                    sum += self.stiffness * energy * height;
                    if self.tubes.repeat.is_some() {
                        self.slope.rise += self.stiffness * energy;
                    }
                    let push = between * (self.stiffness * height * slope / r.max(f64::MIN_POSITIVE));
                    self.slope.posts[a] += push;
                    self.slope.posts[b] -= push;
                }
            }
        }
        sum
    }
}

/// The strands that are like each strand, in its order.
fn followers(tubes: &Tubes) -> Vec<Vec<Follower>> {
    let like = |run: &NodeRange, leader: usize| {
        run.alike.filter(|alike| alike.strand == leader).map(|alike| Follower::of(run.first, &alike))
    };
    (0..tubes.runs.len()).map(|leader| tubes.runs.iter().filter_map(|run| like(run, leader)).collect()).collect()
}

fn piece(from: DVec3, to: DVec3) -> (DVec3, f64) {
    let between = to - from;
    let length = between.length().max(f64::MIN_POSITIVE);
    (between / length, length)
}
