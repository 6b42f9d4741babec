//! Several lifting tasks in one job.

use super::lifting_frequency::{LiftingDuration, multiplier};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Frequency, Quantity as _, Ratio};

quantity::words! {
    /// Where the hands are at the start of a lift.
    pub enum StartHeight {
        /// Below 30 in.
        Low = "below 30 in",
        /// At 30 in and above.
        High = "30 in and above",
    }
}

formula! {
    /// Composite lifting index of up to three lifting tasks that one person does in turn.
    ///
    /// Work each task with `lifting-limit`. Put the task with the highest lifting index first, then the others falling;
    /// of a task that is not there give an index of 0 and any frequency. The further tasks add what they are worth
    /// beyond what the tasks before them already take. The same limits as for one task: 1 for nearly all, 3 for nobody.
    pub struct LiftingComposite = "lifting-composite" in Standing {
        /// Lifting index of the hardest task at its own frequency.
        first_index ("STLI1"): Ratio,
        /// Lifts each minute of the hardest task.
        first_frequency ("F1"): Frequency,
        /// Lifting index of the second task without regard to frequency; 0 for none.
        second_index ("FILI2"): Ratio,
        /// Lifts each minute of the second task.
        second_frequency ("F2"): Frequency,
        /// Lifting index of the third task without regard to frequency; 0 for none.
        third_index ("FILI3"): Ratio,
        /// Lifts each minute of the third task.
        third_frequency ("F3"): Frequency,
        /// How long the job goes on in a day.
        duration ("–"): LiftingDuration,
        /// Where the hands are at the start of the lifts.
        start ("–"): StartHeight,
    }
    gives
    /// Composite lifting index.
    pub struct CompositeIndex {
        /// What the second task adds.
        second_adds ("ΔLI2"): Ratio,
        /// What the third task adds.
        third_adds ("ΔLI3"): Ratio,
        /// Composite lifting index.
        index ("CLI"): Ratio,
    }
    formula "ΔLI2 = FILI2 · (1 / FM(F1 + F2) − 1 / FM(F1))\nΔLI3 = FILI3 · (1 / FM(F1 + F2 + F3) − 1 / FM(F1 + F2))\nCLI = STLI1 + ΔLI2 + ΔLI3"
    valid "Tasks in falling order of their index; frequencies together within the table."
    source { work: "NIOSH publication 94-110", clause: "2.4.5", evidence: Seen, seen: "the formula in the text of the manual as transcribed in a public repository" }
    by composite
}

fn composite(job: &LiftingComposite) -> Result<CompositeIndex, OutOfReach> {
    positive("first_index", job.first_index, "1.6")?;
    not_negative("second_index", job.second_index, "1.0")?;
    not_negative("third_index", job.third_index, "0.7")?;
    for (name, frequency) in [
        ("first_frequency", job.first_frequency),
        ("second_frequency", job.second_frequency),
        ("third_frequency", job.third_frequency),
    ] {
        not_negative(name, frequency, "1 per minute")?;
    }
    let high = job.start == StartHeight::High;
    let inverse = |input: &'static str, each_minute: f64| {
        multiplier(input, each_minute.max(0.2), job.duration, high)
            .map(|multiplier| 1.0 / multiplier)
    };
    let first = job.first_frequency.base() * 60.0;
    let of = |index: Ratio, frequency: Frequency| {
        if index.base() > 0.0 {
            frequency.base() * 60.0
        } else {
            0.0
        }
    };
    let second = first + of(job.second_index, job.second_frequency);
    let third = second + of(job.third_index, job.third_frequency);
    let after_first = inverse("first_frequency", first)?;
    let after_second = inverse("second_frequency", second)?;
    let after_third = inverse("third_frequency", third)?;
    let second_adds = job.second_index.base() * (after_second - after_first);
    let third_adds = job.third_index.base() * (after_third - after_second);
    Ok(CompositeIndex {
        second_adds: Ratio::from_base(second_adds),
        third_adds: Ratio::from_base(third_adds),
        index: Ratio::from_base(job.first_index.base() + second_adds + third_adds),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_further_task_never_makes_the_job_lighter(
            first in 0.1..3.0, second in 0.0..3.0, third in 0.0..3.0, pace in 0.05..3.0
        ) {
            let job = LiftingComposite {
                first_index: Ratio::from_base(first),
                first_frequency: Frequency::from_base(pace / 60.0),
                second_index: Ratio::from_base(second),
                second_frequency: Frequency::from_base(pace / 60.0),
                third_index: Ratio::from_base(third),
                third_frequency: Frequency::from_base(pace / 60.0),
                duration: LiftingDuration::Hour,
                start: StartHeight::Low,
            };
            let found = job.evaluate().unwrap();
            prop_assert!(found.second_adds.base() >= 0.0 && found.third_adds.base() >= 0.0);
            prop_assert!(found.index.base() >= first);
        }
    }
}
