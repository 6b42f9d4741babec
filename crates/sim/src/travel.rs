//! A travel: one leaf, its drive, its load and its plan.

use crate::motion::Motion;
use crate::plan::above_zero;
use crate::{Drive, Load, Obstacle, Plan, Sample, Summary, Trouble};
use quantity::Mass;

/// One leaf's travel.
#[derive(Debug, Clone, Copy)]
pub struct Travel<'a> {
    /// Mass of the leaf; of one that turns, its moment of inertia over the square of its width.
    pub mass: Mass,
    /// What moves it.
    pub drive: &'a Drive,
    /// What it takes.
    pub load: &'a Load,
    /// What the controller wants.
    pub plan: Plan,
    /// What it meets on its way.
    pub obstacle: Option<Obstacle>,
}

impl Travel<'_> {
    /// Moves the leaf until it stands.
    pub fn run(&self) -> Result<Summary, Trouble> {
        self.follow(|_| ())
    }

    /// Moves the leaf until it stands, and shows it every thousandth of a second.
    pub fn follow(&self, mut show: impl FnMut(Sample)) -> Result<Summary, Trouble> {
        above_zero("mass", self.mass)?;
        self.plan.check()?;
        if let Some(obstacle) = &self.obstacle {
            obstacle.check()?;
        }
        let mut motion = Motion::new(self);
        while !motion.stands() {
            motion.tick()?;
            show(motion.sample());
        }
        motion.summary()
    }
}
