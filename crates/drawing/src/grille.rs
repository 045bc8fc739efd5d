//! Where the bars of a grille are.
//!
//! A colonial grille of 3 by 2 in glass 24 by 36 in with bars of 1 in has two upright bars, which leave three lites of
//! (24 - 2) / 3 = 7 1/3 in, and one level bar.
//!
//! Always holds: all lites of a colonial grille are equal, exactly; bars lie within the glass.

use astragal_exact::Number;

use crate::elevation::{Grille, GrillePattern};
use crate::geometry::Region;

/// The bars, upright ones first, from left to right and from the top down.
pub(crate) fn bars(grille: &Grille, glass: &Region) -> Vec<Region> {
    let across = starts(grille, &glass.width(), true);
    let down = starts(grille, &glass.height(), false);
    let bottom = upright_bottom(grille, glass);
    let upright = across.into_iter().map(|start| {
        let left = &glass.left + start;
        Region {
            right: &left + &grille.bar,
            left,
            top: glass.top.clone(),
            bottom: bottom.clone(),
        }
    });
    let level = down.into_iter().map(|start| {
        let top = &glass.top + start;
        Region {
            bottom: &top + &grille.bar,
            top,
            ..glass.clone()
        }
    });
    upright.chain(level).collect()
}

/// Where upright bars end: at the level bar of a row at the top, else at the bottom of the glass.
fn upright_bottom(grille: &Grille, glass: &Region) -> Number {
    match &grille.pattern {
        GrillePattern::TopRow { height, .. } => &glass.top + height - half(&grille.bar),
        GrillePattern::Colonial { .. } | GrillePattern::Prairie { .. } => glass.bottom.clone(),
    }
}

fn half(bar: &Number) -> Number {
    bar.checked_div(&Number::from(2)).unwrap_or_default()
}

/// Where bars begin along a length of glass.
fn starts(grille: &Grille, length: &Number, across: bool) -> Vec<Number> {
    match &grille.pattern {
        GrillePattern::TopRow { height, .. } if !across => vec![height - half(&grille.bar)],
        GrillePattern::Colonial { columns: lites, .. } | GrillePattern::TopRow { columns: lites, .. }
            if across =>
        {
            equal(*lites, length, &grille.bar)
        }
        GrillePattern::Colonial { rows, .. } => equal(*rows, length, &grille.bar),
        GrillePattern::TopRow { .. } => Vec::new(),
        GrillePattern::Prairie { inset } => {
            let half = half(&grille.bar);
            vec![inset - &half, length - inset - half]
        }
    }
}

/// How many lites there are across and down.
pub(crate) fn lites(grille: &Grille) -> (u32, u32) {
    match &grille.pattern {
        GrillePattern::Colonial { columns, rows } => (*columns, *rows),
        GrillePattern::TopRow { columns, .. } => (*columns, 2),
        GrillePattern::Prairie { .. } => (3, 3),
    }
}

/// Where bars begin that leave so many equal lites.
fn equal(lites: u32, length: &Number, bar: &Number) -> Vec<Number> {
    let free = length - bar * Number::from(lites.saturating_sub(1));
    let lite = free.checked_div(&Number::from(lites)).unwrap_or_default();
    let start = |number: u32| &lite * Number::from(number) + bar * Number::from(number - 1);
    (1..lites).map(start).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::Colour;

    fn glass() -> Region {
        Region {
            left: Number::from(2),
            top: Number::from(3),
            right: Number::from(26),
            bottom: Number::from(39),
        }
    }

    fn grille(pattern: GrillePattern) -> Grille {
        Grille {
            pattern,
            bar: Number::ONE,
            colour: Colour::new("White", 255, 255, 255),
        }
    }

    #[test]
    fn all_lites_of_a_colonial_grille_are_equal() {
        let bars = bars(&grille(GrillePattern::Colonial { columns: 3, rows: 2 }), &glass());
        let lefts: Vec<String> = bars.iter().take(2).map(|bar| bar.left.to_string()).collect();
        // 2 + 22/3, and a bar and a lite further.
        assert_eq!(lefts, ["28/3", "53/3"]);
        let level: Vec<String> = bars.iter().skip(2).map(|bar| bar.top.to_string()).collect();
        assert_eq!(level, ["20.5"]);
    }

    #[test]
    fn the_upright_bars_of_a_top_row_end_at_its_level_bar() {
        let pattern = GrillePattern::TopRow {
            columns: 3,
            height: Number::from(10),
        };
        let bars = bars(&grille(pattern), &glass());
        let ends: Vec<(String, String)> = bars
            .iter()
            .map(|bar| (bar.top.to_string(), bar.bottom.to_string()))
            .collect();
        let of = |top: &str, bottom: &str| (top.to_owned(), bottom.to_owned());
        assert_eq!(ends, [of("3", "12.5"), of("3", "12.5"), of("12.5", "13.5")]);
    }

    #[test]
    fn a_prairie_grille_has_its_bars_at_its_inset_from_each_edge() {
        let bars = bars(
            &grille(GrillePattern::Prairie {
                inset: Number::from(4),
            }),
            &glass(),
        );
        let begins: Vec<(String, String)> = bars
            .iter()
            .map(|bar| (bar.left.to_string(), bar.top.to_string()))
            .collect();
        let of = |x: &str, y: &str| (x.to_owned(), y.to_owned());
        assert_eq!(
            begins,
            [of("5.5", "3"), of("21.5", "3"), of("2", "6.5"), of("2", "34.5")]
        );
    }
}
