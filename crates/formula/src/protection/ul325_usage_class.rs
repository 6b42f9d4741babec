//! Usage class of a powered vehicle gate, by UL 325 and ASTM F2200.

use crate::OutOfReach;

quantity::words! {
    /// What kind of place a gate serves.
    pub enum GatePlace {
        /// Homes.
        Homes = "homes",
        /// Shops, hotels, public garages and other buildings that serve the public.
        Public = "serving the public",
        /// Factories, loading docks and the like that do not serve the public.
        Industrial = "industrial, not serving the public",
        /// Guarded places in which security staff supervise and stop unauthorized entry.
        Guarded = "guarded and restricted",
    }
}

quantity::words! {
    /// Usage class.
    pub enum UsageClass {
        /// One to four single-family homes.
        I = "I",
        /// Commercial or general access.
        II = "II",
        /// Industrial or limited access.
        III = "III",
        /// Restricted access.
        IV = "IV",
    }
}

formula! {
    /// Usage class of a gate, on which the rules of UL 325 and ASTM F2200 rest.
    ///
    /// A place that could be two things takes the class with more public in it. Without guards who supervise the gate
    /// itself there is no class IV, however high the fence.
    pub struct Ul325UsageClass = "ul325-usage-class" in Protection {
        /// What kind of place the gate serves.
        place ("–"): GatePlace,
        /// Number of single-family homes that share the gate; counted for homes only.
        dwellings ("n"): u32,
    }
    gives
    /// Usage class of a gate.
    pub struct GateUsage {
        /// Usage class.
        class ("–"): UsageClass,
    }
    formula "homes: I where 1 ≤ n ≤ 4, II where n ≥ 5\nserving the public: II\nindustrial: III\nguarded: IV"
    valid "Powered vehicle gates, United States."
    source { work: "ASTM F2200-20 / UL 325", clause: "usage classes", evidence: Seen, seen: "abstract and scope of ASTM F2200-20 in a standards catalogue, and reprints of UL 325 from 2008 to 2018 in operator manuals" }
    by usage
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn usage(gate: &Ul325UsageClass) -> Result<GateUsage, OutOfReach> {
    let class = match (gate.place, gate.dwellings) {
        (GatePlace::Homes, 0) => {
            return Err(OutOfReach::new(
                "dwellings",
                "give the number of homes that share the gate, at least 1",
            ));
        }
        (GatePlace::Homes, 1..=4) => UsageClass::I,
        (GatePlace::Homes | GatePlace::Public, _) => UsageClass::II,
        (GatePlace::Industrial, _) => UsageClass::III,
        (GatePlace::Guarded, _) => UsageClass::IV,
    };
    Ok(GateUsage { class })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn class(place: GatePlace, dwellings: u32) -> Result<UsageClass, OutOfReach> {
        let gate = Ul325UsageClass { place, dwellings };
        gate.evaluate().map(|usage| usage.class)
    }

    #[test]
    fn more_homes_never_bring_a_lower_class() {
        let classes: Vec<UsageClass> = (1..=20)
            .map(|dwellings| class(GatePlace::Homes, dwellings).unwrap())
            .collect();
        assert!(classes.is_sorted());
    }

    #[test]
    fn no_home_at_all_is_refused() {
        assert_eq!(class(GatePlace::Homes, 0).unwrap_err().input, "dwellings");
        assert!(class(GatePlace::Guarded, 0).is_ok());
    }
}
