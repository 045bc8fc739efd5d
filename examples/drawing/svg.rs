//! The drawing: boxes for nodes with what both walks found, a dot where nodes hang side by side.

use std::fmt::Write;

use crate::drawn::{ATTRIBUTES, Edge, NODES, Node, PICKS, TOP};
use crate::walk::{Least, Question, Walked};

/// Half a box.
const HALF: (i64, i64) = (62, 32);

/// How far below a node its dots hang.
const DOT: i64 = 96;

/// The worked example with its picks, the gate open, as SVG.
pub(crate) fn svg() -> String {
    let question = Question {
        picks: &PICKS,
        is_open: true,
    };
    let walked = question.walk();
    let mut svg = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 900 700\" font-family=\"sans-serif\" font-size=\"13\">\n\
         <rect width=\"900\" height=\"700\" fill=\"#ffffff\"/>\n",
    );
    let top = (590, 50);
    for node in TOP {
        line(&mut svg, top, node);
    }
    dot(&mut svg, top);
    text(
        &mut svg,
        (top.0, top.1 - 16),
        "middle",
        &format!("whole {}", said(walked.whole)),
    );
    for node in &NODES {
        edges(&mut svg, &question, node);
    }
    for (number, node) in NODES.iter().enumerate() {
        draw(&mut svg, node, number, &walked);
    }
    legend(&mut svg);
    svg.push_str("</svg>\n");
    svg
}

/// Changes and money, with a stroke between.
fn said(least: Least) -> String {
    least.map_or_else(
        || "not to be had".to_owned(),
        |(changes, money)| format!("{changes} | {money}"),
    )
}

fn text(svg: &mut String, (x, y): (i64, i64), anchor: &str, text: &str) {
    let _ = writeln!(
        svg,
        "<text x=\"{x}\" y=\"{y}\" text-anchor=\"{anchor}\">{text}</text>"
    );
}

fn dot(svg: &mut String, (x, y): (i64, i64)) {
    let _ = writeln!(svg, "<circle cx=\"{x}\" cy=\"{y}\" r=\"5\" fill=\"#333333\"/>");
}

/// A line from a place to the top of a node's box.
fn line(svg: &mut String, (x, y): (i64, i64), node: usize) {
    let Some(node) = NODES.get(node) else { return };
    let (to_x, to_y) = (node.place.0, node.place.1 - HALF.1);
    let _ = writeln!(
        svg,
        "<path d=\"M{x} {y}L{to_x} {to_y}\" stroke=\"#333333\" fill=\"none\"/>"
    );
}

fn draw(svg: &mut String, node: &Node, number: usize, walked: &Walked) {
    let (x, y) = node.place;
    let at = |walk: &[Least]| said(walk.get(number).copied().flatten());
    let name = ATTRIBUTES.get(node.attribute).map_or("", |one| one.name);
    let _ = writeln!(
        svg,
        "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"8\" fill=\"#eef4f6\" stroke=\"#1f6f8b\"/>\n\
         <text x=\"{x}\" y=\"{}\" text-anchor=\"middle\" font-weight=\"bold\">{name}</text>",
        x - HALF.0,
        y - HALF.1,
        2 * HALF.0,
        2 * HALF.1,
        y - 14
    );
    text(svg, (x, y + 5), "middle", &format!("up {}", at(&walked.up)));
    text(
        svg,
        (x, y + 24),
        "middle",
        &format!("around {}", at(&walked.around)),
    );
}

/// The edges of a node, those to the left before those to the right.
fn edges(svg: &mut String, question: &Question<'_>, node: &Node) {
    let (x, y) = node.place;
    for (number, edge) in node.edges.iter().enumerate() {
        let lines = written(question, node, edge);
        let from = (x, y + HALF.1);
        match edge.below {
            [] => {
                let _ = writeln!(svg, "<path d=\"M{x} {}v14\" stroke=\"#333333\"/>", from.1);
                for (place, one) in (0..).zip(&lines) {
                    text(svg, (x, from.1 + 30 + 17 * place), "middle", one);
                }
            }
            [only] => {
                line(svg, from, *only);
                let to = NODES.get(*only).map_or(from, |below| below.place);
                // Beside a steep line, under a flat one.
                let side = if to.0 < x { -1 } else { 1 };
                let anchor = if side < 0 { "end" } else { "start" };
                let place = if (to.0 - x).abs() < 200 {
                    (x + (to.0 - x) / 4 + 10 * side, from.1 + 30)
                } else {
                    (x - 15 * side, from.1 + 58)
                };
                stacked(svg, place, anchor, &lines);
            }
            several => {
                let side = if number == 0 { -1 } else { 1 };
                let middle = (x + side * 145, y + DOT);
                let _ = writeln!(
                    svg,
                    "<path d=\"M{x} {}L{} {}\" stroke=\"#333333\"/>",
                    from.1, middle.0, middle.1
                );
                dot(svg, middle);
                let anchor = if number == 0 { "end" } else { "start" };
                stacked(svg, (x + side * 85, y + DOT - 38), anchor, &lines);
                for below in several {
                    line(svg, middle, *below);
                }
            }
        }
    }
}

fn stacked(svg: &mut String, (x, y): (i64, i64), anchor: &str, lines: &[String]) {
    for (place, one) in (0..).zip(lines) {
        text(svg, (x, y + 17 * place), anchor, one);
    }
}

/// The options of an edge with what each weighs, and its label.
fn written(question: &Question<'_>, node: &Node, edge: &Edge) -> Vec<String> {
    let option = |option: &usize| {
        let name = ATTRIBUTES
            .get(node.attribute)
            .and_then(|one| one.options.get(*option))
            .map_or("", |one| one.0);
        format!("{name} {}", said(question.option(node.attribute, *option)))
    };
    let mut lines: Vec<String> = edge.options.iter().map(option).collect();
    if edge.is_labelled {
        lines.push(format!("if narrow; hinge {}", said(question.label(edge))));
    }
    lines
}

fn legend(svg: &mut String) {
    let picked = PICKS.iter().filter_map(|(attribute, option)| {
        let attribute = ATTRIBUTES.get(*attribute)?;
        Some(format!(
            "{} {}",
            attribute.options.get(*option)?.0,
            attribute.name
        ))
    });
    let picked = picked.collect::<Vec<_>>().join(", ");
    for (place, one) in (0..).zip([
        "1 | 320: one pick changes, and 320 is paid".to_owned(),
        format!("picked: {picked}; the gate `narrow` is open"),
        "a dot: what hangs below it stands side by side".to_owned(),
    ]) {
        text(svg, (20, 24 + 19 * place), "start", &one);
    }
}
