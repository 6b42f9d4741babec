//! What the site is called and which codes count there.

use crate::{Date, PriceBookFile, Text};
use quantity::{Measured, Time, UnitSystem};

site_words! {
    /// Which family of codes the site is held to.
    pub enum CodeBasis {
        /// United States: UL 325, ASTM F2200, ASCE 7, NEC.
        Us = "us",
        /// Europe: EN 12453, EN 13241, Eurocodes, IEC 60364.
        Eu = "eu",
    }
}

site_words! {
    /// US usage class of the vehicle gate (UL 325, ASTM F2200).
    pub enum UsageClass {
        /// One to four single-family dwellings.
        ClassI = "I",
        /// Five or more dwellings, hotels, shops: general access.
        ClassII = "II",
        /// Industrial or limited access, not the general public.
        ClassIII = "III",
        /// Restricted and guarded.
        ClassIV = "IV",
    }
}

site_words! {
    /// EU use type (EN 12453): who runs the gate and who is near.
    pub enum UseType {
        /// Trained users, no public near.
        Trained = "1",
        /// Trained users, public near.
        TrainedInPublic = "2",
        /// Untrained users.
        Untrained = "3",
    }
}

site_words! {
    /// Edition of the wind code that the authority has adopted.
    pub enum WindCode {
        /// ASCE/SEI 7-16.
        Asce716 = "ASCE 7-16",
        /// ASCE/SEI 7-22.
        Asce722 = "ASCE 7-22",
        /// EN 1991-1-4.
        En1991 = "EN 1991-1-4",
    }
}

site_words! {
    /// Edition of UL 325 that was in force when the operator was made or installed.
    pub enum ProtectionCode {
        /// In force before January 2016.
        Ul325Before2016 = "UL 325 before 2016",
        /// In force from January 2016.
        Ul325From2016 = "UL 325 from 2016",
        /// In force from August 2018.
        Ul325From2018 = "UL 325 from 2018",
        /// EN 12453 (2017 and later).
        En12453 = "EN 12453",
    }
}

site_words! {
    /// What kind of place the gates serve.
    pub enum PlaceServed {
        /// Homes.
        Homes = "homes",
        /// Shops, hotels, public garages and other places that serve the public.
        Public = "serving the public",
        /// Factories, yards, loading docks and the like that do not serve the public.
        Industrial = "industrial, not serving the public",
        /// Guarded places whose staff watch the gate itself and stop whoever may not enter.
        Guarded = "guarded and restricted",
    }
}

record! {
    /// What the site is called, which codes count there, which units it is written in.
    pub struct About {
        /// Name of the site, as the papers show it.
        name: Text,
        /// Which family of codes the site is held to.
        code_basis: CodeBasis,
        /// Units of the papers; the code basis decides when this is missing.
        units: Option<UnitSystem>,
        /// US usage class of the gates.
        usage_class: Option<UsageClass>,
        /// EU use type of the gates.
        use_type: Option<UseType>,
        /// What the property is used for.
        property: Option<Text>,
        /// What kind of place the gates serve.
        serves: Option<PlaceServed>,
        /// Single-family homes that share the gates.
        dwellings: Option<u32>,
        /// Schools, playgrounds, paths, shops and stops nearby with their distance, or that there are none.
        surroundings: Option<Text>,
        /// Day on which use and people were last asked after.
        use_asked: Option<Date>,
        /// Languages that the people who come here read.
        languages: Vec<Text>,
        /// The authority having jurisdiction: who may approve or refuse the work here.
        authority: Option<Text>,
        /// Edition of the wind code adopted here.
        wind_code: Option<WindCode>,
        /// Edition of the protection code in force for this gate.
        protection_code: Option<ProtectionCode>,
        /// Further adopted codes with their editions, such as `"NFPA 70-2023"`.
        codes: Vec<Text>,
        /// Permits and licensed persons that the law asks for here, such as `"electrical permit, licensed electrician"`.
        permits: Vec<Text>,
        /// Day of installation, planned or done.
        installed: Option<Date>,
        /// Longest time from one service visit to the next.
        visit_interval: Option<Measured<Time>>,
        /// Revision of this description, as the papers show it.
        revision: Option<Text>,
        /// Files with generic part entries, beside the site file.
        parts: Vec<Text>,
        /// File with prices, rates, stock, tools and hours worked.
        price_book: Option<PriceBookFile>,
        /// Remarks.
        note: Option<Text>,
    }
}

impl About {
    /// Units in which the papers of this site are printed: those it names, or else those of its code basis.
    pub fn unit_system(&self) -> UnitSystem {
        self.units.unwrap_or(match self.code_basis {
            CodeBasis::Us => UnitSystem::UsCustomary,
            CodeBasis::Eu => UnitSystem::Si,
        })
    }
}
