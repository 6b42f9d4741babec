//! What is asked of leaves that swing and of leaves that rise in the same words: families, scenarios, sweeps.

/// Lets a walk whose lanes are in the plan as it is be asked; with the name of the greatest lean of its paths.
macro_rules! is_asked {
    ($walk:ident, $lean:ident) => {
        impl $walk {
            /// The families in their order.
            pub fn families(&self) -> Vec<Family> {
                let people = self.lanes.first().map_or(&[][..], |lane| &lane.people);
                families(self.lanes.len(), people)
            }

            /// The scenario that a number stands for.
            pub fn scenario(&self, seed: u64) -> Scenario {
                let families = self.families();
                let draw = Draw::new(seed, families.len());
                let family = families[draw.family];
                let lane = &self.lanes[family.pass];
                scenario(family.pass, &lane.drawn(&family, &draw, self.$lean))
            }

            /// What comes of a scenario; refuses a pass or a body that is not there, and numbers that are none.
            pub fn evaluate(&self, scenario: &Scenario) -> Result<Outcome, OutOfReach> {
                let lane = self
                    .lanes
                    .get(scenario.pass)
                    .ok_or_else(|| OutOfReach::new("pass", "this is one of the gate's ways"))?;
                let case = case(scenario);
                check_case(&case, &lane.people)?;
                Ok(outcome(case.way, &lane.run(&case)))
            }

            /// Works the scenarios with the numbers from zero up to a count, on so many threads; tells how many are done.
            pub fn sweep(
                &self,
                count: u64,
                threads: NonZeroUsize,
                done: &(dyn Fn(u64) + Sync),
            ) -> Sweep {
                let work =
                    |family: &Family, block: &Block, bin: &mut Bin| self.work(family, block, bin);
                sweep_with(&self.families(), count, threads, done, &work)
            }

            /// Works the first so many scenarios of each family; the numbers are those of [`Self::sweep`].
            pub fn glance(&self, each: u64) -> Sweep {
                let work =
                    |family: &Family, block: &Block, bin: &mut Bin| self.work(family, block, bin);
                glance_with(&self.families(), each, &work)
            }

            /// The families of which one of the first so many scenarios ends badly.
            pub fn hit(&self, each: u64) -> Vec<Family> {
                let work = |family: &Family, draw: &Draw| self.ends(family, draw).0;
                hit_with(self.families(), each, &work)
            }

            /// How the scenario of a number ends.
            pub(super) fn ends(&self, family: &Family, draw: &Draw) -> (Class, Option<f64>) {
                let lane = &self.lanes[family.pass];
                let found = lane.run(&lane.drawn(family, draw, self.$lean));
                (found.class, found.touch.map(|(_, harm)| harm.severity))
            }
        }
    };
}

pub(super) use is_asked;
