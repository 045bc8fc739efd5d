//! The plot: nodes against attributes, both on logarithmic scales, a line a family.

use std::fmt::Write;

use crate::Point;
use crate::family::Family;

const LEFT: u64 = 80;
const TOP: u64 = 40;
const WIDTH: u64 = 520;
const HEIGHT: u64 = 300;

/// What the axes reach: 10 to 1,000 attributes, 10 to 1,000,000 nodes.
const ACROSS: [usize; 3] = [10, 100, 1_000];
const UP: [usize; 6] = [10, 100, 1_000, 10_000, 100_000, 1_000_000];

/// The plot as SVG.
pub(crate) fn svg(points: &[Point]) -> String {
    let mut svg = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 400\" font-family=\"sans-serif\" font-size=\"13\">\n\
         <rect width=\"640\" height=\"400\" fill=\"#ffffff\"/>\n\
         <text x=\"20\" y=\"22\">nodes</text>\n<text x=\"340\" y=\"388\" text-anchor=\"middle\">attributes</text>\n",
    );
    for attributes in ACROSS {
        let x = across(attributes);
        let (top, bottom) = (TOP, TOP + HEIGHT);
        let _ = writeln!(
            svg,
            "<path d=\"M{x} {top}V{bottom}\" stroke=\"#cccccc\"/>\n\
             <text x=\"{x}\" y=\"{}\" text-anchor=\"middle\">{}</text>",
            bottom + 18,
            crate::spaced(attributes)
        );
    }
    for nodes in UP {
        let y = up(nodes);
        let _ = writeln!(
            svg,
            "<path d=\"M{LEFT} {y}H{}\" stroke=\"#cccccc\"/>\n<text x=\"{}\" y=\"{}\" text-anchor=\"end\">{}</text>",
            LEFT + WIDTH,
            LEFT - 6,
            y + 4,
            crate::spaced(nodes)
        );
    }
    series(
        &mut svg,
        points,
        Family::Line,
        "#1f6f8b",
        "line: one rule an attribute, width bounded",
    );
    series(
        &mut svg,
        points,
        Family::Grid,
        "#b5482a",
        "grid: width grows as the root",
    );
    svg.push_str("</svg>\n");
    svg
}

/// The points of a family, joined, with a name beside the first of its own colour.
fn series(svg: &mut String, points: &[Point], family: Family, colour: &str, name: &str) {
    let of_family = points.iter().filter(|point| {
        point.family == family && (family == Family::Grid || point.rules == point.attributes)
    });
    let mut path = String::new();
    for point in of_family {
        let Some([nodes, ..]) = point.grown else { continue };
        let (x, y) = (across(point.attributes), up(nodes));
        let _ = write!(path, "{}{x} {y}", if path.is_empty() { "M" } else { "L" });
        let _ = writeln!(svg, "<circle cx=\"{x}\" cy=\"{y}\" r=\"3.5\" fill=\"{colour}\"/>");
    }
    let _ = writeln!(
        svg,
        "<path d=\"{path}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"1.5\"/>"
    );
    let y = if family == Family::Line {
        TOP + 24
    } else {
        TOP + 44
    };
    let _ = writeln!(
        svg,
        "<circle cx=\"{}\" cy=\"{}\" r=\"4\" fill=\"{colour}\"/>\n<text x=\"{}\" y=\"{y}\">{name}</text>",
        LEFT + 12,
        y - 4,
        LEFT + 22
    );
}

fn across(attributes: usize) -> u64 {
    // From 8 rather than 10, so that 9 attributes stand on the plot.
    let (from, to) = (logarithm(8), logarithm(1_000));
    LEFT + WIDTH * (logarithm(attributes) - from) / (to - from)
}

fn up(nodes: usize) -> u64 {
    let (from, to) = (logarithm(10), logarithm(1_000_000));
    TOP + HEIGHT - HEIGHT * (logarithm(nodes.max(10)) - from) / (to - from)
}

/// A thousand and twenty-four times the binary logarithm, rounded down.
fn logarithm(number: usize) -> u64 {
    let number = number.max(1) as u128;
    let whole = number.ilog2();
    let mut mantissa = number << (63 - whole);
    let mut fraction = 0;
    for bit in (0..10).rev() {
        mantissa = (mantissa * mantissa) >> 63;
        if mantissa >= 1 << 64 {
            mantissa >>= 1;
            fraction |= 1 << bit;
        }
    }
    (u64::from(whole) << 10) | fraction
}
