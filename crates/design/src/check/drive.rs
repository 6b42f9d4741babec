//! Whose drive: which operator moves a gate or a leaf, and which leaf an operator moves.

use super::Round;
use crate::asking::{Asking, Wants};
use crate::outcome::{Answer, Halt};
use crate::subject::About;
use site::{Gate, Leaf, Operator, Site};

/// How an operator is written.
const OPERATOR: &str = "[[operator]]\nid = \"drive\"\ngate = \"main\"";

impl<'s> Round<'s, '_> {
    /// Asks the question of each operator of the gates that are asked; where one of them has none, an operator is what is
    /// missing.
    pub(crate) fn ask_operators(
        &mut self,
        site: &'s Site,
        asked: impl Fn(&Gate) -> bool,
        answer: impl Fn(&mut Asking<'s>, &'s Gate, &'s Operator) -> Answer,
    ) {
        for gate in site.gate.iter().filter(|gate| asked(gate)) {
            let mut operators = site.operators_of(gate).peekable();
            if operators.peek().is_none() {
                self.ask(About::new(&gate.origin, &gate.id), |asking| {
                    lacking(asking, gate)
                });
            }
            for operator in operators {
                self.ask(About::new(&operator.origin, &operator.id), |asking| {
                    answer(asking, gate, operator)
                });
            }
        }
    }
}

/// The operator of a gate; the first where it has several.
pub(crate) fn operator_of<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<&'s Operator, Halt> {
    let first = site.operators_of(gate).next();
    first.map_or_else(|| lacking(asking, gate), Ok)
}

/// The operator that moves a leaf; the first where it has several.
pub(crate) fn operator_of_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
) -> Result<&'s Operator, Halt> {
    let first = site.operators_of_leaf(gate, leaf).next();
    first.map_or_else(|| lacking(asking, gate), Ok)
}

/// Every operator that moves a leaf: at least one.
pub(crate) fn operators_of_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
) -> Result<Vec<&'s Operator>, Halt> {
    let all: Vec<&Operator> = site.operators_of_leaf(gate, leaf).collect();
    if all.is_empty() {
        return lacking(asking, gate);
    }
    Ok(all)
}

/// The leaf that an operator moves.
pub(crate) fn leaf_of<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    operator: &Operator,
) -> Result<&'s Leaf, Halt> {
    asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.iter().find(|leaf| operator.drives(leaf)),
        "[{ id = \"leaf\", mass = \"640 lb\" }]",
    )
}

fn lacking<'s, T>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<T, Halt> {
    asking.lack(&gate.origin, "operator", Wants::Table(OPERATOR))
}
