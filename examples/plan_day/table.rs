//! Columns of text on a page: aligned by display width, wrapped where a name is long, never wider than the page.

use std::iter::once;

use textwrap::core::display_width;
use textwrap::{Options, WordSplitter};

/// The width of a page, in characters.
pub(crate) const PAGE: usize = 100;
/// Between two columns.
const GAP: usize = 2;
/// The narrowest that a column of names is made.
const NARROWEST: usize = 5;
/// The longest name that is shown whole.
const LONGEST: usize = 120;

/// Where the cells of a column stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Align {
    /// Names: wrapped where the page is too narrow.
    Left,
    /// Numbers: never broken.
    Right,
}

/// Rows of cells under titles. A column without any content is left out.
#[derive(Debug)]
pub(crate) struct Table {
    aligns: Vec<Align>,
    titles: Vec<String>,
    rows: Vec<Vec<String>>,
    page: usize,
}

impl Table {
    /// A table with these titles; a title may have several lines.
    pub(crate) fn new<T: Into<String>>(columns: impl IntoIterator<Item = (Align, T)>) -> Self {
        let (aligns, titles) = columns.into_iter().map(|(align, title)| (align, title.into())).unzip();
        Self { aligns, titles, rows: Vec::new(), page: PAGE }
    }

    /// On a page that leaves room for a margin.
    pub(crate) fn beside(mut self, margin: usize) -> Self {
        self.page = PAGE.saturating_sub(margin);
        self
    }

    /// Adds a row.
    pub(crate) fn row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(cells.into_iter().map(|cell| plain(&cell)).collect());
    }

    /// The lines of the table, without trailing space; none without rows.
    pub(crate) fn lines(&self) -> Vec<String> {
        if self.rows.is_empty() {
            return Vec::new();
        }
        let widths = self.widths();
        let title_lines = self.titles.iter().map(|title| title.lines().count()).max().unwrap_or(0);
        let titles = (0..title_lines).map(|i| {
            let cells = self.titles.iter().map(|title| vec![title.lines().nth(i).unwrap_or("").to_owned()]);
            self.line(&cells.collect::<Vec<_>>(), &widths, 0)
        });
        titles.chain(self.rows.iter().flat_map(|row| self.row_lines(row, &widths))).collect()
    }

    /// One row, over as many lines as its longest name needs.
    fn row_lines(&self, row: &[String], widths: &[usize]) -> Vec<String> {
        let cells: Vec<Vec<String>> = row
            .iter()
            .zip(widths)
            .zip(&self.aligns)
            .map(|((cell, width), align)| match align {
                Align::Left if *width > 0 => wrap(cell, *width),
                _ => vec![cell.clone()],
            })
            .collect();
        let height = cells.iter().map(Vec::len).max().unwrap_or(0);
        (0..height).map(|i| self.line(&cells, widths, i)).collect()
    }

    /// One line of cells that may have several.
    fn line(&self, cells: &[Vec<String>], widths: &[usize], i: usize) -> String {
        let mut line = String::new();
        let columns = cells.iter().zip(widths).zip(&self.aligns).filter(|((_, width), _)| **width > 0);
        for (n, ((cell, width), align)) in columns.enumerate() {
            let text = cell.get(i).map_or("", String::as_str);
            let space = " ".repeat(width.saturating_sub(display_width(text)));
            line.push_str(&" ".repeat(if n == 0 { 0 } else { GAP }));
            match align {
                Align::Left => line.extend([text, &space]),
                Align::Right => line.extend([&space, text]),
            }
        }
        line.truncate(line.trim_end().len());
        line
    }

    /// The width of each column; 0 for one without content.
    fn widths(&self) -> Vec<usize> {
        let mut widths: Vec<usize> = (0..self.aligns.len()).map(|i| self.natural_width(i)).collect();
        // Names are broken between words where that is enough, else within.
        let words: Vec<usize> = (0..self.aligns.len()).map(|i| self.longest_word(i)).collect();
        self.shrink(&mut widths, &words);
        self.shrink(&mut widths, &vec![NARROWEST; words.len()]);
        widths
    }

    /// Takes width from the widest column of names until the page is wide enough.
    fn shrink(&self, widths: &mut [usize], narrowest: &[usize]) {
        while total(widths) > self.page {
            let columns = widths.iter_mut().zip(narrowest).zip(&self.aligns);
            let names = columns.filter(|((width, least), align)| **align == Align::Left && **width > **least);
            match names.map(|((width, _), _)| width).max() {
                Some(width) => *width = width.saturating_sub(1),
                None => break,
            }
        }
    }

    /// What stands in a column.
    fn cells(&self, column: usize) -> impl Iterator<Item = &str> {
        self.rows.iter().filter_map(move |row| row.get(column)).map(String::as_str)
    }

    /// The longest word of a column.
    fn longest_word(&self, column: usize) -> usize {
        let words = self.cells(column).flat_map(|cell| cell.split(' ')).map(display_width).max();
        words.unwrap_or(0).max(NARROWEST)
    }

    /// The width that shows every cell of a column on one line.
    fn natural_width(&self, column: usize) -> usize {
        let cells = self.cells(column).map(display_width).max();
        let title = self.titles.get(column).and_then(|title| title.lines().map(display_width).max());
        match cells {
            None | Some(0) => 0,
            Some(cells) => cells.max(title.unwrap_or(0)),
        }
    }
}

/// The width of a line of columns.
fn total(widths: &[usize]) -> usize {
    let shown = widths.iter().filter(|width| **width > 0);
    shown.map(|width| width.saturating_add(GAP)).sum::<usize>().saturating_sub(GAP)
}

/// A text on lines of a width.
pub(crate) fn wrap(text: &str, width: usize) -> Vec<String> {
    let options = Options::new(width.max(1)).word_splitter(WordSplitter::NoHyphenation);
    textwrap::wrap(text, options).into_iter().map(std::borrow::Cow::into_owned).collect()
}

/// A text behind a label, its further lines standing under the first, on a page that leaves room for a margin.
pub(crate) fn labelled(margin: usize, label: &str, text: &str) -> Vec<String> {
    let indent = display_width(label);
    let room = PAGE.saturating_sub(margin).saturating_sub(indent);
    let mut lines = wrap(&plain_whole(text), room).into_iter();
    let first = format!("{label}{}", lines.next().unwrap_or_default());
    once(first).chain(lines.map(|line| format!("{}{line}", " ".repeat(indent)))).collect()
}

/// A line, or several, moved to the right.
pub(crate) fn indent(lines: Vec<String>, by: usize) -> Vec<String> {
    lines.into_iter().map(|line| format!("{}{line}", " ".repeat(by))).collect()
}

/// A name as it may be printed: on one line, and shortened if very long.
pub(crate) fn plain(text: &str) -> String {
    let mut shown: String = plain_whole(text).chars().take(LONGEST).collect();
    if text.chars().nth(LONGEST).is_some() {
        shown.push_str("...");
    }
    shown
}

/// A text with what moves the print as spaces: control characters, and marks that turn the direction.
fn plain_whole(text: &str) -> String {
    let moves = |c: char| c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    text.chars().map(|c| if moves(c) { ' ' } else { c }).collect()
}

#[cfg(test)]
mod tests {
    use super::Align::{Left, Right};
    use super::*;

    fn table(rows: &[[&str; 3]]) -> Table {
        let mut table = Table::new([(Left, "lot"), (Right, "seed\nlb"), (Left, "for")]);
        for row in rows {
            table.row(row.map(str::to_owned));
        }
        table
    }

    #[test]
    fn columns_stand_under_their_titles() {
        let lines = table(&[["A-1", "4200", "x"], ["A-1002", "17 500", "yy"]]).lines();
        assert_eq!(
            lines,
            ["lot       seed  for", "            lb", "A-1       4200  x", "A-1002  17 500  yy"]
        );
    }

    #[test]
    fn width_is_counted_in_places_not_in_bytes() {
        // Ideographs take two places, a combining accent none.
        let lines = table(&[["豆", "1", "a"], ["Bjørn", "2", "b"], ["e\u{301}t", "3", "c"]]).lines();
        let places: Vec<usize> = lines
            .iter()
            .skip(2)
            .map(|line| display_width(line.trim_end_matches(char::is_alphanumeric)))
            .collect();
        assert!(places.windows(2).all(|pair| pair[0] == pair[1]), "{lines:?}");
    }

    #[test]
    fn an_empty_column_is_left_out() {
        assert_eq!(table(&[["A", "", "x"]]).lines(), ["lot  for", "", "A    x"]);
    }

    #[test]
    fn a_long_name_wraps_and_a_number_does_not() {
        let long = "word ".repeat(22);
        let lines = table(&[[&long, "123 456 789", &"n".repeat(90)]]).lines();
        assert!(lines.iter().all(|line| display_width(line) <= PAGE), "{lines:?}");
        assert!(lines.iter().any(|line| line.contains("123 456 789")));
        assert_eq!(lines.concat().matches("word").count(), 22);
        assert_eq!(lines.concat().matches('n').count(), 90);
    }

    #[test]
    fn a_name_cannot_break_the_page() {
        assert_eq!(plain("a\nb\u{1b}[31mc\u{202e}d"), "a b [31mc d");
        assert_eq!(plain(&"x".repeat(500)).len(), LONGEST + 3);
    }

    #[test]
    fn further_lines_stand_under_the_first() {
        let lines = labelled(4, "STOP  ", &"seed ".repeat(30));
        assert!(lines[0].starts_with("STOP  seed"));
        assert!(lines[1].starts_with("      seed"));
        assert!(lines.iter().all(|line| line.len() <= PAGE - 4));
    }
}
