//! What is different in the list of answers since an earlier state, for a page that shows that one.

use super::{Row, Topic};
use crate::serve::answering::Answered;
use design::Finding;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;

/// What makes the list of now from the list of before: counts, topics in their order with what is new of each, rows that
/// read otherwise, and findings whose working is another.
pub(in crate::serve::page) fn changes(before: &Answered, now: &Answered) -> Value {
    let topics = |answered: &'_ Answered| -> BTreeMap<String, usize> {
        let named = answered.listed.topics.iter().enumerate();
        named.map(|(at, topic)| (topic.name.clone(), at)).collect()
    };
    let known = topics(before);
    let was = |topic: &Topic| Some(&before.listed.topics[*known.get(&topic.name)?]);
    let listed = now.listed.topics.iter();
    let rows = before.listed.topics.iter().flat_map(|topic| &topic.rows);
    let rows: BTreeMap<&str, &Row> = rows.map(|row| (row.name.as_str(), row)).collect();
    let (mut written, mut stale) = (Map::new(), Vec::new());
    for row in listed.clone().flat_map(|topic| &topic.rows) {
        let old = rows.get(row.name.as_str());
        if old.is_none_or(|old| old.markup != row.markup) {
            written.insert(row.name.clone(), json!(&*row.markup));
        }
        if old.is_some_and(|old| !is_same(found(before, old), found(now, row))) {
            stale.push(&row.name);
        }
    }
    json!({
        "revision": now.revision,
        "head": now.listed.head,
        "topics": listed.map(|topic| of_topic(was(topic), topic)).collect::<Vec<_>>(),
        "rows": written,
        "stale": stale,
    })
}

/// A topic, with what of it is another than before.
fn of_topic(was: Option<&Topic>, now: &Topic) -> Value {
    let mut told = json!({ "topic": now.name, "open": now.is_open });
    let names =
        |topic: &Topic| -> Vec<String> { topic.rows.iter().map(|row| row.name.clone()).collect() };
    if was.is_none_or(|was| was.summary != now.summary) {
        told["summary"] = json!(now.summary);
    }
    if was.is_none_or(|was| was.left != now.left) {
        told["left"] = json!(now.left);
    }
    if was.is_none_or(|was| names(was) != names(now)) {
        told["findings"] = json!(names(now));
    }
    told
}

fn found<'a>(answered: &'a Answered, row: &Row) -> Option<&'a Arc<Finding>> {
    answered.answers.findings.get(row.at)
}

fn is_same(was: Option<&Arc<Finding>>, is: Option<&Arc<Finding>>) -> bool {
    match (was, is) {
        (Some(was), Some(is)) => Arc::ptr_eq(was, is) || was == is,
        (was, is) => was.is_none() && is.is_none(),
    }
}
