//! What is different between two texts, as one piece put in the place of another.

use serde::{Deserialize, Serialize};

/// One piece of a text in the place of another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Splice {
    /// Byte at which both pieces begin.
    pub(super) at: usize,
    /// What stood there.
    pub(super) old: String,
    /// What stands there.
    pub(super) new: String,
}

impl Splice {
    /// What makes `new` of `old`.
    pub(super) fn between(old: &str, new: &str) -> Self {
        let alike =
            |pairs: &mut dyn Iterator<Item = (u8, u8)>| pairs.take_while(|(a, b)| a == b).count();
        let mut head = alike(&mut old.bytes().zip(new.bytes()));
        while !(old.is_char_boundary(head) && new.is_char_boundary(head)) {
            head -= 1;
        }
        let most = old.len().min(new.len()) - head;
        let mut tail = alike(&mut old.bytes().rev().zip(new.bytes().rev())).min(most);
        while !(old.is_char_boundary(old.len() - tail) && new.is_char_boundary(new.len() - tail)) {
            tail -= 1;
        }
        Self {
            at: head,
            old: old
                .get(head..old.len() - tail)
                .unwrap_or_default()
                .to_owned(),
            new: new
                .get(head..new.len() - tail)
                .unwrap_or_default()
                .to_owned(),
        }
    }

    /// The text after it; nothing where the old piece does not stand there.
    pub(super) fn forward(&self, text: &str) -> Option<String> {
        put(text, self.at, &self.old, &self.new)
    }

    /// The text before it; nothing where the new piece does not stand there.
    pub(super) fn back(&self, text: &str) -> Option<String> {
        put(text, self.at, &self.new, &self.old)
    }
}

fn put(text: &str, at: usize, from: &str, to: &str) -> Option<String> {
    let head = text.get(..at)?;
    let tail = text.get(at..)?.strip_prefix(from)?;
    Some([head, to, tail].concat())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::Splice;

    #[test]
    fn forward_and_back_give_both_texts() {
        let texts = [
            "",
            "a",
            "aa",
            "aaa",
            "abc",
            "aXc",
            "größe",
            "großé",
            "a\u{301}b",
            "né",
            "nè",
        ];
        for old in texts {
            for new in texts {
                let splice = Splice::between(old, new);
                assert_eq!(splice.forward(old).unwrap(), new, "{old:?} {new:?}");
                assert_eq!(splice.back(new).unwrap(), old, "{old:?} {new:?}");
            }
        }
    }

    #[test]
    fn only_what_differs_is_kept_and_a_foreign_text_is_left_alone() {
        let splice = Splice::between("mass = \"640 lb\"\n", "mass = \"645 lb\"\n");
        assert_eq!((splice.old.as_str(), splice.new.as_str()), ("0", "5"));
        assert_eq!(splice.forward("mass = \"999 lb\"\n"), None);
        assert_eq!(splice.forward("m"), None);
    }
}
