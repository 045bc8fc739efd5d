//! Slanting lines within a rectangle, for obscure glass.
//!
//! Always holds: every line ends on the edge of the rectangle, and lines keep their distance from its upper left corner.

use crate::geometry::{Area, Point};

/// Lines that rise to the right, this far from each other along the edge.
pub(crate) fn rising(area: &Area, apart: i64) -> Vec<Vec<Point>> {
    let (low, high) = (area.left + area.top, area.right + area.bottom);
    let line = |sum: i64| {
        let begin = area.left.max(sum - area.bottom);
        let end = area.right.min(sum - area.top);
        vec![(begin, sum - begin), (end, sum - end)]
    };
    (1..)
        .map(|step| low + step * apart)
        .take_while(|sum| *sum < high)
        .map(line)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stay_within_and_end_on_the_edge() {
        let area = Area {
            left: -50,
            top: 20,
            right: 730,
            bottom: 415,
        };
        let lines = rising(&area, 60);
        assert_eq!(lines.len(), (780 + 395 - 1) / 60);
        for (x, y) in lines.into_iter().flatten() {
            assert!(
                (area.left..=area.right).contains(&x) && (area.top..=area.bottom).contains(&y),
                "{x} {y}"
            );
            let on_edge = x == area.left || x == area.right || y == area.top || y == area.bottom;
            assert!(on_edge, "{x} {y}");
        }
    }
}
