//! Three drawings as they are written, shape by shape. Look at them before you renew them: they are pictures.

mod reading;

use astragal_drawing::{Arrangement, Colour, Elevation, Operation, Panel, Screen, Side, elevation_svg};
use expect_test::expect_file;
use reading::{colonial, hinged, meeting, one, sash, unit};

fn casement() -> Elevation {
    let mut panel = sash(hinged(Side::Left));
    panel.handle = Some(Side::Right);
    panel.screen = Some(Screen::Inside);
    let mut unit = one("28", "45", panel);
    unit.tag = "K1".to_owned();
    unit.title = vec!["Kitchen, over the sink".to_owned()];
    unit
}

fn double_hung() -> Elevation {
    let upper = Panel {
        grille: colonial(3, 2),
        ..sash(Operation::Slides(Side::Bottom))
    };
    let lower = Panel {
        screen: Some(Screen::Outside),
        ..sash(Operation::Slides(Side::Top))
    };
    let panels = vec![upper, lower];
    let mut unit = unit(
        "35 5/8",
        "59",
        Arrangement::Stacked {
            panels,
            dividers: vec![meeting("29 1/2")],
        },
    );
    unit.tag = "D1".to_owned();
    unit.frame.colour = Colour::new("Bronze", 74, 60, 49);
    unit
}

fn tall_fixed() -> Elevation {
    let mut panel = Panel::new(Operation::Fixed);
    panel.tempered = true;
    let mut unit = one("10", "90", panel);
    unit.tag = "H1 <stairs> & \"hall\"".to_owned();
    unit
}

#[test]
fn a_casement_is_drawn_as_it_was() {
    expect_file!["golden/casement.svg"].assert_eq(&elevation_svg(&casement()).unwrap());
}

#[test]
fn a_double_hung_unit_is_drawn_as_it_was() {
    expect_file!["golden/double-hung.svg"].assert_eq(&elevation_svg(&double_hung()).unwrap());
}

#[test]
fn a_tall_fixed_unit_is_drawn_as_it_was() {
    expect_file!["golden/tall-fixed.svg"].assert_eq(&elevation_svg(&tall_fixed()).unwrap());
}
