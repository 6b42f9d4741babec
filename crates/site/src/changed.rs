//! What is different in a site later, where nothing else is: measured values, and the lines on which something stands.

use quantity::{Looked, Measured, Quantity};
use std::sync::Arc;

/// Measured values that are others later, and where what stood on a line stands.
#[derive(Debug, Clone)]
pub struct Changed {
    /// The values as they were.
    values: Looked,
    /// For each file, and each line of it on which something stood, the line on which it stands; zero for other lines.
    lines: Vec<(Arc<str>, Vec<usize>)>,
}

impl Changed {
    /// Nothing.
    pub(crate) const fn nothing() -> Self {
        Self {
            values: Looked::NONE,
            lines: Vec::new(),
        }
    }

    /// Puts a value in as it was, where it is another now.
    pub(crate) fn put<Q: Quantity>(&mut self, was: &Measured<Q>, is: &Measured<Q>) {
        self.values.put_changed(was, is);
    }

    /// Notes that what stood on a line of a file stands on another, or on the same; false where something beside it on that
    /// line stands elsewhere.
    pub(crate) fn moves(&mut self, file: &Arc<str>, was: usize, is: usize) -> bool {
        let known = self.lines.iter().position(|(known, _)| known == file);
        let at = known.unwrap_or_else(|| {
            self.lines.push((file.clone(), Vec::new()));
            self.lines.len() - 1
        });
        let lines = &mut self.lines[at].1;
        if lines.len() <= was {
            lines.resize(was + 1, 0);
        }
        let line = &mut lines[was];
        let is_new = *line == 0;
        if is_new {
            *line = is;
        }
        is_new || *line == is
    }

    /// What stood before something else in a file still stands before it.
    pub(crate) fn keeps_order(&self) -> bool {
        self.lines.iter().all(|(_, lines)| {
            let lines = lines.iter().filter(|line| **line > 0);
            lines.is_sorted_by(|one, next| one < next)
        })
    }

    /// Everything stands on the line on which it stood.
    pub fn moves_nothing(&self) -> bool {
        let mut lines = self
            .lines
            .iter()
            .flat_map(|(_, lines)| lines.iter().enumerate());
        lines.all(|(was, is)| *is == 0 || *is == was)
    }

    /// The measured values that are others, as they were.
    pub fn values(&self) -> &Looked {
        &self.values
    }

    /// The line on which stands what stood on a line of a file; nothing where nothing is known of that line. A file of which
    /// nothing is known is the same.
    pub fn line(&self, file: &str, was: usize) -> Option<usize> {
        let known = self.lines.iter().find(|(known, _)| **known == *file);
        let Some((_, lines)) = known else {
            return Some(was);
        };
        lines.get(was).copied().filter(|line| *line > 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moved(lines: &[(usize, usize)]) -> (Changed, bool) {
        let (mut changed, file) = (Changed::nothing(), Arc::from("site.toml"));
        let one_way = lines
            .iter()
            .all(|(was, is)| changed.moves(&file, *was, *is));
        (changed, one_way)
    }

    #[test]
    fn each_line_goes_one_way_and_none_overtakes_another() {
        let (changed, one_way) = moved(&[(3, 4), (9, 10), (3, 4), (1, 1)]);
        assert!(one_way && changed.keeps_order());
        assert_eq!(changed.line("site.toml", 9), Some(10));
        assert_eq!(changed.line("site.toml", 2), None);
        assert_eq!(changed.line("site.toml", 900), None);
        assert_eq!(changed.line("prices.toml", 2), Some(2));
        assert!(!moved(&[(3, 4), (3, 5)]).1);
        assert!(!moved(&[(3, 6), (4, 5)]).0.keeps_order());
        assert!(!moved(&[(3, 5), (4, 5)]).0.keeps_order());
    }
}
