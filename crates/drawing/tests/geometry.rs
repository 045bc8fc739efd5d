//! What is drawn, read back from the drawing: to scale, on the right side, as many bars as there are.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod reading;

use astragal_drawing::{
    Along, Arrangement, Colour, Dimension, Divider, Elevation, Glass, Grille, GrillePattern, Operation,
    Panel, Scale, Screen, Side, elevation_svg, elevation_svg_at,
};
use astragal_exact::{LengthUnit, Number};
use reading::{area, colonial, hinged, inches, lines, meeting, one, parts, sash, unit};
use roxmltree::Document;

const SIDES: [Side; 4] = [Side::Left, Side::Right, Side::Top, Side::Bottom];

fn drawn(unit: &Elevation) -> String {
    elevation_svg(unit).unwrap_or_else(|error| panic!("{error}"))
}

/// Half a hundredth of a millimetre: each edge is rounded once.
fn is_to_scale(hundredths: i64, inches: &Number, scale: u32) -> bool {
    let exact = (inches * Number::from(2_540))
        .checked_div(&Number::from(scale))
        .unwrap();
    (Number::from(hundredths) - exact).abs() <= Number::ratio(1, 2).unwrap()
}

#[test]
fn the_frame_is_drawn_to_the_scale_that_is_stated() {
    let rows = [
        ("28", "45", LengthUnit::Inch, "1 in = 1 ft (1:12)", 12),
        ("35 5/8", "59 1/16", LengthUnit::Inch, "3/4 in = 1 ft (1:16)", 16),
        ("10", "90", LengthUnit::Inch, "1/2 in = 1 ft (1:24)", 24),
        ("120", "12", LengthUnit::Inch, "3/8 in = 1 ft (1:32)", 32),
        ("600", "600", LengthUnit::Inch, "1/16 in = 1 ft (1:192)", 192),
        ("900 mm", "1400 mm", LengthUnit::Millimetre, "Scale 1:15.", 15),
    ];
    for (width, height, written, stated, per) in rows {
        let mut unit = one(width, height, sash(Operation::Fixed));
        unit.unit = written;
        let text = drawn(&unit);
        assert!(text.contains(stated), "{width} {height}: {text}");
        let document = Document::parse(&text).unwrap();
        let frames = parts(&document, "frame");
        let (left, top, right, bottom) = area(&frames[0]);
        assert_eq!((left, top), (0, 0));
        assert!(is_to_scale(right, &unit.width, per), "{width}: {right}");
        assert!(is_to_scale(bottom, &unit.height, per), "{height}: {bottom}");
    }
}

#[test]
fn a_millimetre_of_the_picture_is_a_hundred_of_its_units() {
    let text = drawn(&one("28", "45", sash(Operation::Fixed)));
    let document = Document::parse(&text).unwrap();
    let (left, top, right, bottom) = reading::view(&document);
    let stated = |name: &str| document.root_element().attribute(name).unwrap().to_owned();
    let millimetres = |length: i64| format!("{}.{:02}mm", length / 100, length % 100);
    assert_eq!(stated("width"), millimetres(right - left));
    assert_eq!(stated("height"), millimetres(bottom - top));
}

#[test]
fn sash_and_glass_lie_where_their_faces_put_them() {
    let text = elevation_svg_at(
        &one("28", "45", sash(Operation::Fixed)),
        Scale::one_to(10).unwrap(),
    )
    .unwrap();
    let document = Document::parse(&text).unwrap();
    // At 1:10 an inch is 254 hundredths: a frame of 2 in, then a sash of 1 1/2 in.
    assert_eq!(area(&parts(&document, "sash")[0]), (508, 508, 26 * 254, 43 * 254));
    assert_eq!(area(&parts(&document, "glass")[0]), (889, 889, 6_223, 10_541));
}

#[test]
fn dashed_lines_meet_at_the_middle_of_the_hinge_side() {
    for side in SIDES {
        let text = drawn(&one("28", "45", sash(hinged(side))));
        let document = Document::parse(&text).unwrap();
        let (left, top, right, bottom) = area(&parts(&document, "glass")[0]);
        let (x, y) = ((left + right) / 2, (top + bottom) / 2);
        let (apex, corners) = match side {
            Side::Left => ((left, y), [(right, top), (right, bottom)]),
            Side::Right => ((right, y), [(left, top), (left, bottom)]),
            Side::Top => ((x, top), [(left, bottom), (right, bottom)]),
            Side::Bottom => ((x, bottom), [(left, top), (right, top)]),
        };
        let hinge = &parts(&document, "hinge")[0];
        assert!(hinge.attribute("stroke-dasharray").is_some());
        assert_eq!(lines(hinge), corners.map(|corner| vec![corner, apex]), "{side:?}");
        assert!(text.contains("Dashed lines meet at the hinge side"));
    }
}

#[test]
fn arrows_point_where_the_panel_slides() {
    for side in SIDES {
        let text = drawn(&one("40", "40", sash(Operation::Slides(side))));
        let document = Document::parse(&text).unwrap();
        let shaft = lines(&parts(&document, "arrow-shaft")[0]).concat();
        let point = lines(&parts(&document, "arrow-head")[0]).concat()[0];
        let (dx, dy) = (point.0 - shaft[0].0, point.1 - shaft[0].1);
        let expected = match side {
            Side::Left => (-1, 0),
            Side::Right => (1, 0),
            Side::Top => (0, -1),
            Side::Bottom => (0, 1),
        };
        assert_eq!((dx.signum(), dy.signum()), expected, "{side:?}");
        assert!(dx.abs().max(dy.abs()) > 500, "an arrow of {dx} by {dy}");
    }
}

#[test]
fn glass_too_narrow_for_an_arrow_has_none_and_the_words_say_it() {
    // At 1:192, 7 in of glass are 0.93 mm wide, and 5 in 0.66 mm.
    for (width, arrows) in [("14", 1), ("12", 0)] {
        let unit = one(width, "600", sash(Operation::Slides(Side::Top)));
        let text = drawn(&unit);
        let document = Document::parse(&text).unwrap();
        assert_eq!(parts(&document, "arrow-head").len(), arrows, "{width}");
        assert!(text.contains("Slides up"));
    }
}

#[test]
fn thin_bars_are_drawn_thick_enough_to_be_seen() {
    let pattern = GrillePattern::Colonial { columns: 2, rows: 2 };
    let grille = Some(Grille {
        pattern,
        bar: inches("1/64"),
        colour: reading::white(),
    });
    let text = drawn(&one(
        "600",
        "600",
        Panel {
            grille,
            ..Panel::new(Operation::Fixed)
        },
    ));
    let document = Document::parse(&text).unwrap();
    let bars: Vec<_> = parts(&document, "grille").iter().map(area).collect();
    assert_eq!((bars[0].2 - bars[0].0, bars[1].3 - bars[1].1), (14, 14));
}

#[test]
fn panels_of_a_double_hung_unit_meet_at_its_divider() {
    let panels = vec![
        sash(Operation::Slides(Side::Bottom)),
        sash(Operation::Slides(Side::Top)),
    ];
    let unit = unit(
        "36",
        "60",
        Arrangement::Stacked {
            panels,
            dividers: vec![meeting("29 1/2")],
        },
    );
    let text = elevation_svg_at(&unit, Scale::one_to(20).unwrap()).unwrap();
    let document = Document::parse(&text).unwrap();
    let sashes: Vec<_> = parts(&document, "sash").iter().map(area).collect();
    assert_eq!(sashes.len(), 2);
    // 29 1/2 in at 1:20 are 3746.5 hundredths.
    assert_eq!((sashes[0].3, sashes[1].1), (3_747, 3_747));
    assert!(text.contains("Upper: slides down; lower: slides up"));
}

#[test]
fn a_mullion_keeps_panels_apart_by_its_bar() {
    let panels = vec![
        sash(hinged(Side::Left)),
        Panel::new(Operation::Fixed),
        sash(hinged(Side::Right)),
    ];
    let divider = |at: &str| Divider {
        at: inches(at),
        bar: inches("3"),
    };
    let dividers = vec![divider("24"), divider("72")];
    let unit = unit("96", "54", Arrangement::SideBySide { panels, dividers });
    let text = elevation_svg_at(&unit, Scale::one_to(10).unwrap()).unwrap();
    let document = Document::parse(&text).unwrap();
    let sashes: Vec<_> = parts(&document, "sash").iter().map(area).collect();
    let (left, centre) = (sashes[0], area(&parts(&document, "glass")[1]));
    assert_eq!(centre.0 - left.2, 3 * 254);
    assert_eq!(left.2, 5_715, "24 in less half of 3 in");
    assert!(text.contains("Left: hinged left, opens out; centre: fixed; right: hinged right, opens out"));
}

#[test]
fn a_grille_has_one_bar_fewer_than_lites_each_way() {
    for (columns, rows) in [(1, 1), (3, 2), (2, 1), (24, 24)] {
        let mut panel = sash(Operation::Fixed);
        panel.grille = colonial(columns, rows);
        let text = drawn(&one("72", "80", panel));
        let document = Document::parse(&text).unwrap();
        let bars = parts(&document, "grille").len();
        assert_eq!(
            bars,
            usize::try_from(columns + rows - 2).unwrap(),
            "{columns} by {rows}"
        );
        assert!(text.contains(&format!(
            "Grille {columns} wide by {rows} high, bars 7/8 in, White"
        )));
    }
    let mut panel = Panel::new(Operation::Fixed);
    let pattern = GrillePattern::Prairie { inset: inches("6") };
    panel.grille = Some(Grille {
        pattern,
        bar: inches("1"),
        colour: reading::white(),
    });
    let text = drawn(&one("72", "60", panel));
    assert_eq!(parts(&Document::parse(&text).unwrap(), "grille").len(), 4);
}

#[test]
fn fixed_tempered_obscure_and_screened_panels_say_so_twice() {
    let mut panel = Panel::new(Operation::Fixed);
    panel.tempered = true;
    panel.glass = Glass::Obscure;
    panel.screen = Some(Screen::Outside);
    let text = drawn(&one("40", "50", panel));
    let document = Document::parse(&text).unwrap();
    let said = |part: &str| {
        parts(&document, part)
            .first()
            .and_then(|node| node.text().map(str::to_owned))
    };
    assert_eq!(said("fixed").as_deref(), Some("F"));
    assert_eq!(said("tempered").as_deref(), Some("T"));
    assert_eq!(said("screen-word").as_deref(), Some("screen"));
    assert_eq!(parts(&document, "obscure").len(), 1);
    let words = parts(&document, "description");
    let words: Vec<&str> = words.iter().filter_map(|node| node.text()).collect();
    assert_eq!(
        words,
        [
            "Fixed",
            "Obscure glass",
            "Tempered glass",
            "Screen outside",
            "Frame: White"
        ]
    );
}

#[test]
fn a_screen_outside_lies_over_the_bars_and_one_inside_behind_them() {
    for (screen, is_over) in [(Screen::Outside, true), (Screen::Inside, false)] {
        let mut panel = sash(hinged(Side::Left));
        panel.grille = colonial(2, 3);
        panel.screen = Some(screen);
        let text = drawn(&one("28", "45", panel));
        let (mesh, bar) = (text.find("\"screen\""), text.rfind("\"grille\""));
        assert_eq!(mesh > bar, is_over, "{screen:?}");
    }
}

#[test]
fn a_half_screen_is_drawn_on_its_half_only() {
    let upper = sash(Operation::Slides(Side::Bottom));
    let lower = Panel {
        screen: Some(Screen::Outside),
        ..sash(Operation::Slides(Side::Top))
    };
    let panels = vec![upper, lower];
    let text = drawn(&unit(
        "36",
        "60",
        Arrangement::Stacked {
            panels,
            dividers: vec![meeting("30")],
        },
    ));
    let document = Document::parse(&text).unwrap();
    let (meshes, glasses) = (parts(&document, "screen"), parts(&document, "glass"));
    assert_eq!(meshes.len(), 1);
    assert!(reading::within(
        reading::covered(&meshes[0]).unwrap(),
        area(&glasses[1])
    ));
    assert!(text.contains("Lower: screen outside"));
}

#[test]
fn the_mesh_of_a_screen_stands_in_a_corner_that_the_hinge_lines_leave_free() {
    let rows = [
        (hinged(Side::Left), (true, false)),
        (hinged(Side::Right), (false, false)),
        (hinged(Side::Top), (true, true)),
        (hinged(Side::Bottom), (true, false)),
        (Operation::Slides(Side::Right), (true, false)),
    ];
    for (operation, (is_left, is_top)) in rows {
        let text = drawn(&one(
            "28",
            "45",
            Panel {
                screen: Some(Screen::Inside),
                ..sash(operation)
            },
        ));
        let document = Document::parse(&text).unwrap();
        let mesh = reading::covered(&parts(&document, "screen")[0]).unwrap();
        let glass = area(&parts(&document, "glass")[0]);
        assert_eq!(
            (mesh.0 == glass.0, mesh.1 == glass.1),
            (is_left, is_top),
            "{operation:?}"
        );
        assert_eq!(
            (mesh.2 == glass.2, mesh.3 == glass.3),
            (!is_left, !is_top),
            "{operation:?}"
        );
    }
}

#[test]
fn dimensions_that_run_over_each_other_take_lines_of_their_own() {
    let mut unit = one("100", "20", sash(Operation::Fixed));
    let dimension = |from: &str, to: &str| Dimension {
        along: Along::Width,
        from: inches(from),
        to: inches(to),
        label: String::new(),
    };
    unit.dimensions = vec![
        dimension("0", "40"),
        dimension("30", "100"),
        dimension("40", "60"),
    ];
    let text = drawn(&unit);
    let document = Document::parse(&text).unwrap();
    let lines: Vec<i64> = parts(&document, "dimension-line")
        .iter()
        .take(4)
        .map(|node| lines(node).concat()[0].1)
        .collect();
    // The third finds room beside the first; the second and the overall one do not.
    assert_eq!(lines.len(), 4);
    assert!(
        lines[0] == lines[1] && lines[1] < lines[2] && lines[2] < lines[3],
        "{lines:?}"
    );
}

#[test]
fn a_handle_stands_on_its_side() {
    for side in SIDES {
        let panel = Panel {
            handle: Some(side),
            ..sash(Operation::Slides(Side::Top))
        };
        let text = drawn(&one("40", "40", panel));
        let document = Document::parse(&text).unwrap();
        let (handle, glass) = (
            area(&parts(&document, "handle")[0]),
            area(&parts(&document, "glass")[0]),
        );
        let is_there = match side {
            Side::Left => handle.2 <= glass.0,
            Side::Right => handle.0 >= glass.2,
            Side::Top => handle.3 <= glass.1,
            Side::Bottom => handle.1 >= glass.3,
        };
        assert!(is_there, "{side:?}: {handle:?} {glass:?}");
    }
}

#[test]
fn dimensions_are_written_exactly_and_run_as_far_as_they_say() {
    let mut unit = one("35 5/8", "59 1/3", sash(Operation::Fixed));
    let dimension = |along, from: &str, to: &str, label: &str| Dimension {
        along,
        from: inches(from),
        to: inches(to),
        label: label.to_owned(),
    };
    unit.dimensions = vec![
        dimension(Along::Width, "0", "12", ""),
        dimension(Along::Width, "12", "35 5/8", ""),
        dimension(Along::Height, "29 1/2", "59", "meeting rail"),
    ];
    let text = elevation_svg_at(&unit, Scale::one_to(20).unwrap()).unwrap();
    let document = Document::parse(&text).unwrap();
    let texts: Vec<String> = parts(&document, "dimension")
        .iter()
        .map(|node| node.text().unwrap().to_owned())
        .collect();
    assert_eq!(
        texts,
        [
            "12 in",
            "23 5/8 in",
            "35 5/8 in",
            "meeting rail 29 1/2 in",
            "59.333… in"
        ]
    );
    let runs: Vec<_> = parts(&document, "dimension-line")
        .iter()
        .map(lines)
        .map(|lines| lines.concat())
        .collect();
    let across: Vec<(i64, i64)> = runs.iter().take(3).map(|run| (run[0].0, run[1].0)).collect();
    assert_eq!(across, [(0, 1_524), (1_524, 4_524), (0, 4_524)]);
    // Two that only touch share a line; the overall one is further out.
    assert_eq!(runs[0][0].1, runs[1][0].1);
    assert!(runs[2][0].1 > runs[0][0].1);
    assert_eq!((runs[3][0].1, runs[3][1].1), (3_747, 7_493));
}

#[test]
fn lines_within_a_dark_frame_are_light_and_a_white_frame_has_an_outline() {
    let fill = |text: &str, part: &str, name: &str| {
        let document = Document::parse(text).unwrap();
        parts(&document, part)[0].attribute(name).unwrap().to_owned()
    };
    let mut unit = one("28", "45", sash(Operation::Fixed));
    let white = drawn(&unit);
    assert_eq!(fill(&white, "frame", "stroke"), "#262626");
    assert_eq!(fill(&white, "sash", "stroke"), "#262626");
    unit.frame.colour = Colour::new("Black", 20, 20, 20);
    unit.sash_colour = unit.frame.colour.clone();
    let black = drawn(&unit);
    assert_eq!(fill(&black, "frame", "fill"), "#141414");
    assert_eq!(fill(&black, "sash", "stroke"), "#e8e8e8");
    assert!(black.contains("Frame and sash: Black"));
}

/// The usual sizes of awnings, alone on a drawing: the mesh shrinks where the hinge lines would leave its word no room.
#[test]
fn the_mesh_of_an_awning_has_its_word_clear_of_the_hinge_lines() {
    for (width, height) in [
        ("36", "24"),
        ("30", "20"),
        ("24", "24"),
        ("32", "18"),
        ("48", "30"),
    ] {
        let text = drawn(&one(
            width,
            height,
            Panel {
                screen: Some(Screen::Inside),
                ..sash(hinged(Side::Top))
            },
        ));
        let document = Document::parse(&text).unwrap();
        let word = &parts(&document, "screen-word")[..];
        assert_eq!(word.len(), 1, "{width} x {height}");
        let plate = area(&parts(&document, "mark-plate")[0]);
        let glass = area(&parts(&document, "glass")[0]);
        let mesh = reading::covered(&parts(&document, "screen")[0]).unwrap();
        assert!(plate.0 > mesh.2 && plate.1 >= mesh.1, "{width} x {height}");
        // The line runs from the lower left corner to the middle of the top.
        let (right, bottom) = (plate.2 - glass.0, plate.3 - glass.1);
        let (wide, tall) = (glass.2 - glass.0, glass.3 - glass.1);
        assert!(2 * right * tall < wide * (tall - bottom), "{width} x {height}");
    }
}
