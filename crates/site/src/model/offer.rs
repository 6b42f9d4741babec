//! What is offered to the customer, what is needed beside the things of the site, what is on its way, and the way in.

use crate::{Date, Id, Percent, Price, Text};
use quantity::{Length, Measured, Pressure, Time, Volume};

record! {
    /// What is offered to the customer.
    pub struct Offer {
        /// Number of the offer.
        number: Option<Text>,
        /// Who asked for it.
        to: Option<Text>,
        /// How long it stands.
        valid: Option<Measured<Time>>,
        /// What the customer gets, in sentences.
        includes: Vec<Text>,
        /// Work that is left out, in sentences.
        excludes: Vec<Text>,
        /// Terms, in sentences.
        terms: Vec<Text>,
        /// What is paid when.
        payment: Vec<Payment>,
        /// Things of the site that were there before, or that others bring.
        there: Vec<Id>,
        /// Way to the site, one way.
        distance: Option<Measured<Length>>,
        /// Time of the drive, one way.
        drive: Option<Measured<Time>>,
        /// Drives there and back.
        trips: Option<u32>,
        /// What is paid to others: permits, inspections, disposal.
        fee: Vec<Fee>,
        /// The ways in which the job can be done, side by side.
        option: Vec<OfferOption>,
    }
}

record! {
    /// A part of the price, and when it is paid.
    pub struct Payment {
        /// When it is paid: `"with the order"`.
        when: Text,
        /// Share of the price.
        share: Option<Percent>,
    }
}

record! {
    /// Something that is paid to others.
    pub struct Fee {
        /// What it is.
        what: Text,
        /// What it costs.
        price: Option<Price>,
    }
}

record! {
    /// One of the ways in which the job can be done.
    pub struct OfferOption {
        /// Name, unique on the site.
        id: Id,
        /// What it is called.
        name: Text,
        /// What it is, in a sentence for the customer.
        what: Option<Text>,
        /// Things of the site that are left out.
        without: Vec<Id>,
        /// What comes on top.
        material: Vec<FurtherMaterial>,
        /// Hours that come on top.
        more_hours: Option<Measured<Time>>,
        /// Hours that are saved.
        fewer_hours: Option<Measured<Time>>,
        /// Its price, tax left out.
        price: Option<Price>,
    }
}

record! {
    /// Something that is needed and is no thing of the site.
    pub struct FurtherMaterial {
        /// Entry of the price book.
        item: Text,
        /// How many.
        count: Option<u32>,
        /// How much of it, where it is used by length.
        length: Option<Measured<Length>>,
        /// How much of it, where it is used by volume.
        volume: Option<Measured<Volume>>,
        /// What it is for.
        why: Option<Text>,
    }
}

record! {
    /// An order that is on its way.
    pub struct Ordered {
        /// Entries of the price book that are on this order.
        items: Vec<Text>,
        /// Packs of each; all that the job needs where missing.
        count: Option<u32>,
        /// Day on which they come.
        due: Option<Date>,
    }
}

record! {
    /// The way in for machines, from the road to where they work.
    pub struct Access {
        /// Its width at the narrowest place.
        width: Option<Measured<Length>>,
        /// Its height at the lowest place.
        height: Option<Measured<Length>>,
        /// Pressure that the softest ground on the way bears.
        bearing: Option<Measured<Pressure>>,
    }
}
