//! The one place in which a calculation is declared.

use crate::sheet::{OutOfReach, Sheet};
use quantity::Value;

/// A calculation: a type whose fields are the inputs.
pub trait Formula: Sized {
    /// What it gives.
    type Gives;
    /// Everything said about it.
    const SHEET: &'static Sheet;
    /// Computes the outputs, or says which input is out of reach and why.
    fn evaluate(&self) -> Result<Self::Gives, OutOfReach>;
    /// The inputs in the order of the sheet.
    fn inputs(&self) -> Vec<Value>;
    /// The calculation for inputs given in the order of the sheet; nothing if one has the wrong sort.
    fn from_inputs(values: &[Value]) -> Option<Self>;
    /// The outputs in the order of the sheet.
    fn outputs(gives: &Self::Gives) -> Vec<Value>;
}

/// Name and text of the case file beside each calculation of a discipline.
macro_rules! cases {
    ($discipline:literal: $($name:literal,)*) => {
        &[$((
            concat!($discipline, "/", $name, ".cases.toml"),
            include_str!(concat!($name, ".cases.toml")),
        ),)*]
    };
}

/// Declares a calculation: the type with its inputs, the type with its outputs, and the sheet of both.
///
/// The doc comment of the type is its prose, the doc comment of each field its one-line meaning. `by` names the
/// function from `&Self` to the outputs.
#[macro_export]
macro_rules! formula {
    (
        $(#[doc = $doc:literal])+
        pub struct $type:ident = $name:literal in $discipline:ident {
            $(#[doc = $input_doc:literal] $input:ident ($letter:literal): $input_type:ty,)+
        }
        gives $(#[doc = $gives_doc:literal])+ pub struct $gives:ident {
            $(#[doc = $output_doc:literal] $output:ident ($output_letter:literal): $output_type:ty,)+
        }
        formula $formula:literal
        valid $validity:literal
        source { work: $work:literal, clause: $clause:literal, evidence: $evidence:ident, seen: $seen:literal }
        by $function:path
    ) => {
        $(#[doc = $doc])+
        #[derive(Debug, Clone, Copy)]
        pub struct $type {
            $(#[doc = $input_doc] pub $input: $input_type,)+
        }

        $(#[doc = $gives_doc])+
        #[derive(Debug, Clone, Copy)]
        pub struct $gives {
            $(#[doc = $output_doc] pub $output: $output_type,)+
        }

        impl $crate::Formula for $type {
            type Gives = $gives;
            const SHEET: &'static $crate::Sheet = &$crate::Sheet {
                name: $name,
                discipline: $crate::Discipline::$discipline,
                prose: concat!($($doc, "\n"),+),
                formula: $formula,
                inputs: &[$($crate::Symbol {
                    name: stringify!($input),
                    letter: $letter,
                    meaning: $input_doc.trim_ascii(),
                    sort: <$input_type as quantity::Argument>::SORT,
                },)+],
                outputs: &[$($crate::Symbol {
                    name: stringify!($output),
                    letter: $output_letter,
                    meaning: $output_doc.trim_ascii(),
                    sort: <$output_type as quantity::Argument>::SORT,
                },)+],
                validity: $validity,
                source: $crate::Source {
                    work: $work,
                    clause: $clause,
                    evidence: $crate::Evidence::$evidence,
                    seen: $seen,
                },
            };

            fn evaluate(&self) -> Result<$gives, $crate::OutOfReach> {
                $function(self)
            }

            fn inputs(&self) -> Vec<quantity::Value> {
                vec![$(quantity::Argument::to_value(&self.$input),)+]
            }

            fn from_inputs(values: &[quantity::Value]) -> Option<Self> {
                let mut values = values.iter();
                let made = Self { $($input: quantity::Argument::from_value(values.next()?)?,)+ };
                if values.next().is_some() { return None; }
                Some(made)
            }

            fn outputs(gives: &$gives) -> Vec<quantity::Value> {
                vec![$(quantity::Argument::to_value(&gives.$output),)+]
            }
        }
    };
}
