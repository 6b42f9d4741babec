//! The list of checks is whole: each answers a question that exists, under its codes, and no question twice.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::CHECKS;
use crate::question::question;
use std::collections::BTreeSet;

#[test]
fn each_check_answers_a_question_of_its_own_under_the_codes_of_that_question() {
    let mut seen = BTreeSet::new();
    for check in CHECKS {
        let question = question(check.question).unwrap();
        assert_eq!(question.codes, check.codes, "{}", check.question);
        assert!(seen.insert(check.question), "{} twice", check.question);
        assert!(
            !question.fields.is_empty(),
            "{} names the fields that it reads",
            check.question
        );
    }
}

#[test]
fn each_check_says_what_it_concerns_and_what_it_leaves_open_as_part_of_a_sentence() {
    for check in CHECKS {
        assert!(!check.concerns.is_empty(), "{}", check.question);
        assert!(
            !check.concerns.ends_with('.') && !check.leaves_open.ends_with('.'),
            "{}",
            check.question
        );
    }
}
