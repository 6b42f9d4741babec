//! Addresses of the data network, as they are written on its plan.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use core::net::Ipv4Addr;
use quantity::Known;
use std::fmt::{Display, Formatter};

/// An address, written `"10.20.30.11"`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Address(Ipv4Addr);

impl Address {
    /// Reads an address; nothing when it is not one.
    pub fn read(text: &str) -> Option<Self> {
        text.trim().parse().ok().map(Self)
    }

    /// The address after this one, where there is one.
    pub fn next(self) -> Option<Self> {
        self.0.to_bits().checked_add(1).map(Self::of)
    }

    fn of(bits: u32) -> Self {
        Self(Ipv4Addr::from_bits(bits))
    }
}

impl Display for Address {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        self.0.fmt(f)
    }
}

/// The addresses of one network segment, written `"10.20.30.0/24"`: the first one and how many leading bits they share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AddressBlock {
    first: Address,
    shared: u8,
}

impl AddressBlock {
    /// Reads a block; nothing when it is not one, or does not begin at its first address.
    pub fn read(text: &str) -> Option<Self> {
        let (first, shared) = text.trim().split_once('/')?;
        let (first, shared) = (Address::read(first)?, shared.parse().ok()?);
        let block = Self { first, shared };
        ((8..=30).contains(&shared) && first.0.to_bits() & block.free_bits() == 0).then_some(block)
    }

    /// The bits in which its addresses differ.
    fn free_bits(self) -> u32 {
        u32::MAX.checked_shr(u32::from(self.shared)).unwrap_or(0)
    }

    /// The address is one of the block, and neither its own name nor the call to all of it.
    pub fn has(self, address: Address) -> bool {
        let (first, bits) = (self.first.0.to_bits(), address.0.to_bits());
        bits > first && bits < first | self.free_bits()
    }

    /// Some address belongs to both blocks.
    pub fn overlaps(self, other: Self) -> bool {
        let wider = self.free_bits() | other.free_bits();
        self.first.0.to_bits() & !wider == other.first.0.to_bits() & !wider
    }

    /// The addresses that a device can have, lowest first.
    pub fn addresses(self) -> impl Iterator<Item = Address> {
        let first = self.first.0.to_bits();
        (first + 1..first | self.free_bits()).map(Address::of)
    }
}

impl Display for AddressBlock {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}/{}", self.first, self.shared)
    }
}

/// Addresses that are handed out automatically: `"10.20.30.100 to 10.20.30.199"`, or `"none"`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AddressRange(Option<(Address, Address)>);

impl AddressRange {
    /// Reads a range; nothing when it is not one.
    pub fn read(text: &str) -> Option<Self> {
        if text.trim() == "none" {
            return Some(Self(None));
        }
        let (first, last) = text.split_once(" to ")?;
        let (first, last) = (Address::read(first)?, Address::read(last)?);
        (first <= last).then_some(Self(Some((first, last))))
    }

    /// The address is one of the range.
    pub fn has(self, address: Address) -> bool {
        self.0
            .is_some_and(|(first, last)| (first..=last).contains(&address))
    }
}

impl Display for AddressRange {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        match self.0 {
            None => f.write_str("none"),
            Some((first, last)) => write!(f, "{first} to {last}"),
        }
    }
}

/// How an address, a block or a range is read, and told when it is not one.
macro_rules! written {
    ($type:ident, $what:literal, $example:literal, $pattern:literal) => {
        impl Field for $type {
            fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
                let expected = concat!($what, ", such as `\"", $example, "\"`");
                let Some(text) = node.text() else {
                    reader.refuse_type(node, expected, concat!("\"", $example, "\""));
                    return None;
                };
                let read = Self::read(text);
                if read.is_none() {
                    let what = format!("{} is not {}", node.key_in_words(), $what);
                    let problem = reader
                        .problem(node, Code::NotAnAddress, what)
                        .expected(expected);
                    reader.report(problem);
                }
                read
            }

            fn state(&self, key: &str, statement: &mut Statement) {
                statement.add(key, self, Known::Stated);
            }

            fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
                self == later
            }

            fn schema(definitions: &mut Definitions) -> serde_json::Value {
                definitions.shared(stringify!($type), || {
                    serde_json::json!({
                        "description": concat!($what, "."),
                        "type": "string",
                        "pattern": $pattern,
                        "examples": [$example],
                    })
                })
            }
        }
    };
}

written!(
    Address,
    "an address of four numbers",
    "10.20.30.11",
    r"^\d{1,3}(\.\d{1,3}){3}$"
);
written!(
    AddressBlock,
    "the first address of a segment and its shared bits",
    "10.20.30.0/24",
    r"^\d{1,3}(\.\d{1,3}){3}/\d{1,2}$"
);
written!(
    AddressRange,
    "a first and a last address, or `none`",
    "10.20.30.100 to 10.20.30.199",
    r"^none$|^\d{1,3}(\.\d{1,3}){3} to \d{1,3}(\.\d{1,3}){3}$"
);

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::{Address, AddressBlock, AddressRange};

    #[test]
    fn what_is_read_is_printed_again() {
        for text in ["10.20.30.0/24", "192.168.4.128/26"] {
            assert_eq!(AddressBlock::read(text).unwrap().to_string(), text);
        }
        for text in ["none", "10.0.0.9 to 10.0.0.9"] {
            assert_eq!(AddressRange::read(text).unwrap().to_string(), text);
        }
        assert_eq!(Address::read("10.0.0.7").unwrap().to_string(), "10.0.0.7");
    }

    #[test]
    fn what_is_none_is_refused() {
        for text in ["10.0.0", "10.0.0.256", "gate", ""] {
            assert!(Address::read(text).is_none(), "{text}");
        }
        for text in [
            "10.0.0.1/24",
            "10.0.0.0/31",
            "10.0.0.0/0",
            "10.0.0.0",
            "10.0.0.0/x",
        ] {
            assert!(AddressBlock::read(text).is_none(), "{text}");
        }
        assert!(AddressRange::read("10.0.0.9 to 10.0.0.1").is_none());
    }

    #[test]
    fn a_block_has_its_addresses_and_no_others() {
        let block = AddressBlock::read("10.20.30.0/29").unwrap();
        let all: Vec<Address> = block.addresses().collect();
        assert_eq!(all.len(), 6);
        assert!(all.iter().all(|address| block.has(*address)));
        for text in ["10.20.30.0", "10.20.30.7", "10.20.30.8"] {
            assert!(!block.has(Address::read(text).unwrap()), "{text}");
        }
        assert!(block.overlaps(AddressBlock::read("10.20.0.0/16").unwrap()));
        assert!(!block.overlaps(AddressBlock::read("10.20.31.0/24").unwrap()));
        assert_eq!(all[0].next(), Some(all[1]));
    }
}
