//! What a unit is drawn as: its layout, its panels and what lies over them, and why it is not drawn.
//!
//! The catalog here has casements, hinged on a side that somebody must choose, sliders of two panels, fixed units, and other
//! units that nothing is said of; a colour, and grilles that are asked for some of them.
#![expect(clippy::expect_used, reason = "these are tests")]

use astragal_model::{
    Arranged, Attribute, AttributeIndex, Audience, Authorities, Bounds, Catalog, Date, Declarations, Drawing,
    DrawingKey, Drawn, DrawnGrille, Expression, Function, GlassMark, GrilleDrawing, GrillePattern, Id,
    Layout, Measure, MeasureIndex, Measured, Number, OnPanels, OptionEntry, PanelMotion, Pick, ScreenSide,
    Setting, Site, Standard, Subject, TradeFunction, UndefinedCause, Undrawn, Value, ValueType, Want, Wants,
    draw, fill,
};

const OPERATION: AttributeIndex = AttributeIndex(0);
const HINGE_SIDE: AttributeIndex = AttributeIndex(1);
const COLOUR: AttributeIndex = AttributeIndex(2);
const GRILLE: AttributeIndex = AttributeIndex(3);
const BARS: AttributeIndex = AttributeIndex(4);
const WIDTH: MeasureIndex = MeasureIndex(0);

fn attribute(id: &str, options: &[&str], standard: Standard, applies_when: Option<Expression>) -> Attribute {
    Attribute {
        id: Id::new(id),
        part: None,
        label: id.to_owned(),
        section: None,
        options: options.iter().map(|option| OptionEntry::plain(option)).collect(),
        applies_when,
        standard,
        audience: Audience::Customer,
    }
}

fn is(attribute: AttributeIndex, option: &str) -> Expression {
    Expression::is_option(attribute, option)
}

fn inches(inches: i64) -> Expression {
    Expression::Literal(Value::Length(Number::from(inches)))
}

fn count(count: i64) -> Expression {
    Expression::Literal(Value::Number(Number::from(count)))
}

fn width() -> Expression {
    Expression::Read(Subject::Measure(WIDTH))
}

fn half_width() -> Expression {
    Expression::Divide(Box::new(width()), Number::from(2))
}

fn declarations() -> Declarations {
    let mut of = Declarations::empty("drawn");
    let standard = |option: &str| Standard::Option(Id::new(option));
    let operations = ["casement", "slider", "fixed", "other"];
    let has_grille = Expression::Not(Box::new(is(GRILLE, "none")));
    for attribute in [
        attribute("operation", &operations, standard("casement"), None),
        attribute(
            "hinge_side",
            &["left", "right"],
            Standard::Ask,
            Some(is(OPERATION, "casement")),
        ),
        attribute("colour", &["white", "black"], standard("white"), None),
        attribute(
            "grille",
            &["none", "grid", "inset", "row"],
            standard("none"),
            None,
        ),
        attribute("bars", &["white", "brass"], standard("white"), Some(has_grille)),
    ] {
        of.attributes.push(attribute);
    }
    of.measures.push(Measure {
        id: Id::new("width"),
        label: "Width".to_owned(),
        value_type: ValueType::Length,
        step: None,
        bounds: Bounds::default(),
        taken_as: None,
    });
    of.drawing = Some(drawing());
    of
}

fn drawing() -> Drawing {
    let single = |when: Expression, motion: PanelMotion, sash: Option<Expression>| Layout {
        when: Some(when),
        panels: vec![motion],
        arranged: Arranged::SideBySide,
        divided_at: Vec::new(),
        sash,
    };
    let hinged = |side: &str, motion| {
        let when = Expression::And(vec![is(OPERATION, "casement"), is(HINGE_SIDE, side)]);
        single(when, motion, Some(inches(2)))
    };
    Drawing {
        width: width(),
        height: inches(48),
        frame: inches(3),
        frame_colour: COLOUR,
        layouts: vec![
            hinged("left", PanelMotion::HingedLeft),
            hinged("right", PanelMotion::HingedRight),
            Layout {
                when: Some(is(OPERATION, "slider")),
                panels: vec![PanelMotion::SlidesRight, PanelMotion::Fixed],
                arranged: Arranged::SideBySide,
                divided_at: vec![half_width()],
                sash: Some(inches(2)),
            },
            single(is(OPERATION, "fixed"), PanelMotion::Fixed, None),
        ],
        grilles: grilles(),
        screens: vec![
            on(is(OPERATION, "slider"), &[0], ScreenSide::Outside),
            on(is(OPERATION, "casement"), &[], ScreenSide::Inside),
        ],
        marks: vec![
            on(is(OPERATION, "slider"), &[1], GlassMark::Tempered),
            on(is(COLOUR, "black"), &[], GlassMark::Tempered),
            on(is(COLOUR, "black"), &[], GlassMark::Obscure),
        ],
    }
}

fn on<T>(when: Expression, panels: &[usize], what: T) -> OnPanels<T> {
    OnPanels {
        when: Some(when),
        panels: panels.to_vec(),
        what,
    }
}

fn grilles() -> Vec<OnPanels<GrilleDrawing>> {
    let patterns = [
        (
            "grid",
            GrillePattern::Grid {
                columns: count(3),
                rows: count(2),
            },
        ),
        ("inset", GrillePattern::Perimeter(inches(4))),
        (
            "row",
            GrillePattern::TopRow {
                columns: count(3),
                height: inches(9),
            },
        ),
    ];
    let grille = |(option, pattern): (&str, GrillePattern<Expression>)| {
        let drawing = GrilleDrawing {
            pattern,
            bar: inches(1),
            colour: BARS,
        };
        on(is(GRILLE, option), &[], drawing)
    };
    patterns.into_iter().map(grille).collect()
}

/// The drawing of a unit with these picks, 30 in wide, in a catalog that was changed.
fn drawn_with(
    change: impl FnOnce(&mut Declarations),
    picks: &[(AttributeIndex, &str)],
) -> Result<Drawn, Undrawn> {
    drawn_of(change, picks, Some(30))
}

fn drawn(picks: &[(AttributeIndex, &str)]) -> Result<Drawn, Undrawn> {
    drawn_with(|_| {}, picks)
}

fn drawn_of(
    change: impl FnOnce(&mut Declarations),
    picks: &[(AttributeIndex, &str)],
    width: Option<i64>,
) -> Result<Drawn, Undrawn> {
    let mut of = declarations();
    change(&mut of);
    let catalog = Catalog::new(of).expect("a catalog");
    let mut site = Site::default();
    site.measures.push(width.map(|width| Measured {
        value: Value::Length(Number::from(width)),
        deducted_by: None,
    }));
    let authorities = Authorities::default();
    let setting = Setting {
        catalog: &catalog,
        book: None,
        policy: None,
        site: &site,
        waivers: &[],
        authorities: &authorities,
        date: Date::constant(2026, 11, 25),
    };
    let pick = |(attribute, option): &(AttributeIndex, &str)| Pick {
        attribute: *attribute,
        option: Id::new(option),
        quoted: None,
    };
    let picks: Vec<Pick> = picks.iter().map(pick).collect();
    draw(&setting, &fill(&setting, &picks))
}

fn with_drawing(change: impl FnOnce(&mut Drawing)) -> impl FnOnce(&mut Declarations) {
    |of| change(of.drawing.as_mut().expect("it is drawn"))
}

const LEFT: &[(AttributeIndex, &str)] = &[(HINGE_SIDE, "left")];
const SLIDER: &[(AttributeIndex, &str)] = &[(OPERATION, "slider")];

#[test]
fn a_casement_is_one_panel_hinged_on_the_side_that_was_chosen() {
    for (side, motion) in [
        ("left", PanelMotion::HingedLeft),
        ("right", PanelMotion::HingedRight),
    ] {
        let found = drawn(&[(HINGE_SIDE, side)]).unwrap();
        let motions: Vec<PanelMotion> = found.panels.iter().map(|panel| panel.motion).collect();
        assert_eq!(motions, [motion]);
        assert_eq!(
            (found.width, found.height, found.frame),
            (Number::from(30), Number::from(48), Number::from(3))
        );
        assert_eq!(found.frame_colour, (COLOUR, Id::new("white")));
        assert_eq!(found.divided_at, []);
    }
}

#[test]
fn a_hinge_side_that_nobody_chose_is_wanted_and_not_drawn() {
    let wants = Wants::from([Want::Choice(HINGE_SIDE)]);
    assert_eq!(drawn(&[]), Err(Undrawn::Unknown(wants)));
}

#[test]
fn a_size_that_nobody_measured_is_wanted_and_not_drawn() {
    let wants = Wants::from([Want::Measure(WIDTH)]);
    assert_eq!(drawn_of(|_| {}, LEFT, None), Err(Undrawn::Unknown(wants)));
}

#[test]
fn a_colour_that_nobody_chose_is_wanted_and_not_drawn() {
    let ask = |of: &mut Declarations| {
        let mut colour = of.attributes.at(COLOUR).clone();
        colour.standard = Standard::Ask;
        of.attributes.put(COLOUR, colour);
    };
    // Marks hang on it as well, which would ask for the same.
    let wants = Wants::from([Want::Choice(COLOUR)]);
    assert_eq!(drawn_with(ask, LEFT), Err(Undrawn::Unknown(wants)));
}

#[test]
fn a_catalog_that_says_nothing_draws_nothing() {
    assert_eq!(drawn_with(|of| of.drawing = None, LEFT), Err(Undrawn::NoDrawing));
}

#[test]
fn a_unit_that_no_layout_is_for_is_not_drawn() {
    assert_eq!(drawn(&[(OPERATION, "other")]), Err(Undrawn::NoLayout));
}

#[test]
fn a_size_without_a_value_is_not_drawn() {
    let weight = Function::Trade(TradeFunction::PoundsOfGlass);
    let of_nothing = vec![inches(1_000), Expression::Literal(Value::Area(Number::ONE))];
    let change = with_drawing(|drawing| drawing.frame = Expression::Call(weight, of_nothing));
    let found = drawn_with(change, LEFT);
    assert!(
        matches!(found, Err(Undrawn::NoValue(DrawingKey::Frame, _))),
        "{found:?}"
    );
}

#[test]
fn a_colour_that_is_not_asked_is_not_drawn() {
    let change = with_drawing(|drawing| drawing.frame_colour = BARS);
    let not_asked = Undrawn::NoValue(DrawingKey::FrameColour, UndefinedCause::NotAsked(BARS));
    assert_eq!(drawn_with(change, LEFT), Err(not_asked));
}

#[test]
fn the_first_layout_that_holds_is_drawn() {
    let change = with_drawing(|drawing| {
        drawing.layouts.reverse();
        drawing.layouts.push(Layout {
            when: None,
            panels: vec![PanelMotion::SlidesUp, PanelMotion::SlidesDown],
            arranged: Arranged::Stacked,
            divided_at: vec![inches(24)],
            sash: None,
        });
    });
    let found = drawn_with(change, &[(OPERATION, "other")]).unwrap();
    assert_eq!((found.arranged, found.panels.len()), (Arranged::Stacked, 2));
    // It stands behind all the others.
    assert_eq!(found.layout, 4);
    let always_first = with_drawing(|drawing| {
        for layout in &mut drawing.layouts {
            layout.when = None;
        }
    });
    let found = drawn_with(always_first, SLIDER).unwrap();
    let motions: Vec<PanelMotion> = found.panels.iter().map(|panel| panel.motion).collect();
    assert_eq!(motions, [PanelMotion::HingedLeft]);
}

#[test]
fn panels_stand_in_order_and_meet_where_the_layout_says() {
    let found = drawn(SLIDER).unwrap();
    let motions: Vec<PanelMotion> = found.panels.iter().map(|panel| panel.motion).collect();
    assert_eq!(motions, [PanelMotion::SlidesRight, PanelMotion::Fixed]);
    assert_eq!(found.divided_at, [Number::from(15)]);
    assert!(
        found
            .panels
            .iter()
            .all(|panel| panel.sash == Some(Number::from(2)))
    );
    let fixed = drawn(&[(OPERATION, "fixed")]).unwrap();
    assert!(fixed.panels.iter().all(|panel| panel.sash.is_none()));
}

#[test]
fn screens_and_marks_lie_on_the_panels_that_are_named_or_on_all() {
    let found = drawn(SLIDER).unwrap();
    let screens: Vec<Option<ScreenSide>> = found.panels.iter().map(|panel| panel.screen).collect();
    assert_eq!(screens, [Some(ScreenSide::Outside), None]);
    let marks: Vec<Vec<GlassMark>> = found.panels.into_iter().map(|panel| panel.marks).collect();
    assert_eq!(marks, [vec![], vec![GlassMark::Tempered]]);
    let casement = drawn(LEFT).unwrap();
    let screens: Vec<Option<ScreenSide>> = casement.panels.iter().map(|panel| panel.screen).collect();
    assert_eq!(screens, [Some(ScreenSide::Inside)]);
}

#[test]
fn a_mark_that_is_said_twice_is_there_once() {
    let found = drawn(&[(OPERATION, "slider"), (COLOUR, "black")]).unwrap();
    let both = [GlassMark::Obscure, GlassMark::Tempered];
    for panel in found.panels {
        assert_eq!(panel.marks, both);
    }
}

#[test]
fn a_grille_is_drawn_in_its_pattern_and_in_the_colour_of_its_bars() {
    let rows: [(&str, GrillePattern<Number>); 3] = [
        (
            "grid",
            GrillePattern::Grid {
                columns: Number::from(3),
                rows: Number::from(2),
            },
        ),
        ("inset", GrillePattern::Perimeter(Number::from(4))),
        (
            "row",
            GrillePattern::TopRow {
                columns: Number::from(3),
                height: Number::from(9),
            },
        ),
    ];
    for (grille, (option, pattern)) in rows.into_iter().enumerate() {
        let found = drawn(&[(OPERATION, "slider"), (GRILLE, option), (BARS, "brass")]).unwrap();
        let expected = DrawnGrille {
            grille,
            pattern,
            bar: Number::ONE,
            colour: (BARS, Id::new("brass")),
        };
        for panel in found.panels {
            assert_eq!(panel.grille.as_ref(), Some(&expected), "{option}");
        }
    }
    let none = drawn(SLIDER).unwrap();
    assert!(none.panels.iter().all(|panel| panel.grille.is_none()));
}

#[test]
fn the_first_grille_of_a_panel_is_drawn_and_each_panel_may_have_its_own() {
    let change = with_drawing(|drawing| {
        let mut first = drawing
            .grilles
            .iter()
            .skip(1)
            .take(1)
            .cloned()
            .collect::<Vec<_>>();
        for grille in &mut first {
            grille.when = None;
            grille.panels = vec![1];
        }
        for grille in &mut drawing.grilles {
            grille.when = None;
        }
        first.append(&mut drawing.grilles);
        drawing.grilles = first;
    });
    let picks = [(OPERATION, "slider"), (GRILLE, "grid")];
    let found = drawn_with(change, &picks).unwrap();
    let is_inset = |grille: &DrawnGrille| matches!(grille.pattern, GrillePattern::Perimeter(_));
    let inset: Vec<bool> = found
        .panels
        .iter()
        .map(|panel| panel.grille.as_ref().is_some_and(is_inset))
        .collect();
    assert_eq!(inset, [false, true]);
}
