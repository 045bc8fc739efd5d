//! The page, and the tables in it.

use std::fs;
use std::path::PathBuf;

use crate::Row;

const START: &str = "<!-- table ";
const END: &str = "<!-- end -->";

/// `docs/trade.md`, as it is and as it should be.
pub(crate) struct Page {
    before: String,
    after: String,
}

impl Page {
    pub(crate) fn read() -> Self {
        let before = fs::read_to_string(path()).unwrap();
        Self {
            after: before.clone(),
            before,
        }
    }

    pub(crate) fn text(&self) -> &str {
        &self.before
    }

    /// The names of its tables, in their order.
    pub(crate) fn names(&self) -> Vec<&str> {
        let markers = self.before.lines().filter_map(|line| line.strip_prefix(START));
        markers.map(|rest| rest.strip_suffix(" -->").unwrap()).collect()
    }

    /// Puts these rows under the head of a table.
    pub(crate) fn put(&mut self, name: &str, rows: &[Row]) {
        let start = format!("{START}{name} -->\n");
        let (above, rest) = self
            .after
            .split_once(&start)
            .unwrap_or_else(|| panic!("the page has no table `{name}`"));
        let (table, below) = rest.split_once(END).unwrap();
        let head: Vec<&str> = table.lines().take(2).collect();
        let [titles, rule] = head[..] else {
            panic!("table `{name}` has no head")
        };
        let columns = rule.matches("---").count();
        let mut lines = format!("{titles}\n{rule}\n");
        assert!(!rows.is_empty(), "table `{name}` has no rows");
        for row in rows {
            assert_eq!(row.len(), columns, "table `{name}`: {row:?}");
            lines += &format!("| {} |\n", row.join(" | "));
        }
        self.after = format!("{above}{start}{lines}{END}{below}");
    }

    /// Fails where the page has other rows; with `UPDATE_EXPECT=1` it writes them.
    pub(crate) fn compare_or_write(&self) {
        if self.before == self.after {
            return;
        }
        if std::env::var_os("UPDATE_EXPECT").is_some() {
            fs::write(path(), &self.after).unwrap();
            return;
        }
        let differing = self
            .before
            .lines()
            .zip(self.after.lines())
            .find(|(is, should)| is != should);
        panic!(
            "docs/trade.md differs; its line, and what it should be: {differing:#?}\nUPDATE_EXPECT=1 writes the page anew"
        );
    }
}

fn path() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../docs/trade.md")
}
