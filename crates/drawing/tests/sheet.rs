//! The sheet of an order, read back: grouped by floor and room, one scale, nothing lost, everything escaped.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod reading;

use astragal_drawing::{
    Along, Cell, Dimension, Elevation, Floor, Glass, Operation, Panel, Picture, Room, Screen, Sheet, Side,
    Standing, Status, sheet_html,
};
use astragal_exact::{LengthUnit, Number};
use reading::{area, hinged, one, parts, sash};
use roxmltree::{Document, Node, ParsingOptions};

fn cell(tag: &str, unit: Elevation) -> Cell {
    Cell {
        tag: tag.to_owned(),
        quantity: 1,
        picture: Picture::Drawn(Box::new(unit)),
        status: None,
        lines: Vec::new(),
        cautions: Vec::new(),
        notes: Vec::new(),
    }
}

fn window(width: &str, height: &str) -> Elevation {
    one(width, height, sash(hinged(Side::Left)))
}

fn sheet(rooms: Vec<(&str, Vec<Cell>)>) -> Sheet {
    let rooms = rooms
        .into_iter()
        .map(|(name, cells)| Room {
            name: name.to_owned(),
            cells,
        })
        .collect();
    Sheet {
        title: "The corner house".to_owned(),
        lines: vec!["as of 2026-11-25".to_owned()],
        unit: LengthUnit::Inch,
        floors: vec![Floor {
            name: "Ground floor".to_owned(),
            rooms,
        }],
        notes: vec!["The local code governs.".to_owned()],
    }
}

/// The page without what only HTML leaves open: its `meta` elements.
fn page(sheet: &Sheet) -> String {
    let page = sheet_html(sheet).unwrap_or_else(|error| panic!("{error}"));
    let mut lines = page.split("<meta ");
    let mut closed = lines.next().unwrap().to_owned();
    for line in lines {
        closed.push_str(line.split_once('>').unwrap().1);
    }
    closed
}

fn parsed(page: &str) -> Document<'_> {
    let options = ParsingOptions {
        allow_dtd: true,
        ..ParsingOptions::default()
    };
    Document::parse_with_options(page, options).unwrap_or_else(|error| panic!("{error}\n{page}"))
}

fn of_class<'a>(document: &'a Document<'_>, class: &str) -> Vec<Node<'a, 'a>> {
    let has = |node: &Node<'_, '_>| {
        node.attribute("class")
            .is_some_and(|classes| classes.split(' ').any(|one| one == class))
    };
    document.descendants().filter(has).collect()
}

fn said(node: &Node<'_, '_>) -> String {
    node.descendants()
        .filter_map(|node| node.is_text().then(|| node.text()).flatten())
        .collect()
}

/// The frames of the units, without those of the legend.
fn frames(document: &Document<'_>) -> Vec<reading::Area> {
    let frames = parts(document, "frame").into_iter();
    let in_legend = |node: &Node<'_, '_>| {
        node.ancestors()
            .any(|ancestor| ancestor.attribute("class") == Some("legend"))
    };
    frames
        .filter(|frame| !in_legend(frame))
        .map(|frame| area(&frame))
        .collect()
}

#[test]
fn all_units_are_drawn_at_the_one_scale_that_is_stated() {
    let cells = vec![
        cell("K1", window("28", "45")),
        cell("K2", window("36", "72")),
        cell("K3", window("10", "90")),
    ];
    let text = page(&sheet(vec![("Kitchen", cells)]));
    let document = parsed(&text);
    assert!(
        said(&document.root_element()).contains("All units are drawn at one scale: 3/8 in = 1 ft (1:32)")
    );
    let hundredths = |inches: i64| {
        let exact = Number::ratio(inches * 2_540, 32).unwrap();
        exact.round().to_i64().unwrap()
    };
    let expected =
        [(28, 45), (36, 72), (10, 90)].map(|(width, height)| (0, 0, hundredths(width), hundredths(height)));
    assert_eq!(frames(&document), expected);
}

#[test]
fn units_of_one_row_stand_on_one_line() {
    let mut chain = window("36", "72");
    let (from, to) = (Number::from(6), Number::from(30));
    chain.dimensions.push(Dimension {
        along: Along::Width,
        from,
        to,
        label: String::new(),
    });
    let cells = vec![
        cell("K1", window("28", "45")),
        cell("K2", chain),
        cell("K3", window("30", "20")),
    ];
    let text = page(&sheet(vec![("Kitchen", cells)]));
    let document = parsed(&text);
    let lines: Vec<i64> = of_class(&document, "drawing")
        .iter()
        .map(|drawing| {
            let style = drawing.attribute("style").unwrap();
            let lift = style
                .split_once("padding-bottom: ")
                .unwrap()
                .1
                .trim_end_matches("mm")
                .replace('.', "");
            let picture = drawing.children().find(Node::is_element).unwrap();
            let view: Vec<i64> = picture
                .attribute("viewBox")
                .unwrap()
                .split(' ')
                .map(|n| n.parse().unwrap())
                .collect();
            let frame = picture
                .children()
                .find(|node| node.attribute("data-part") == Some("frame"))
                .unwrap();
            lift.parse::<i64>().unwrap() + view[1] + view[3] - area(&frame).3
        })
        .collect();
    assert_eq!(lines.len(), 3);
    assert!(lines.iter().all(|line| *line == lines[0]), "{lines:?}");
}

#[test]
fn openings_stand_under_their_floor_and_room_in_their_order() {
    let small = |tag: &str| cell(tag, window("28", "45"));
    let rooms = vec![
        ("Kitchen", vec![small("K1"), small("K2")]),
        ("Bath", vec![small("B1"), small("B2")]),
        ("Empty room", Vec::new()),
        (
            "Hall",
            vec![cell("H1", one("120", "12", Panel::new(Operation::Fixed)))],
        ),
    ];
    let text = page(&sheet(rooms));
    let document = parsed(&text);
    let rows: Vec<String> = of_class(&document, "row")
        .iter()
        .map(|row| {
            let names = row.descendants().filter(|node| {
                node.tag_name().name() == "h3" || node.attribute("class").is_some_and(|class| class == "tag")
            });
            names.map(|node| said(&node)).collect::<Vec<String>>().join(" | ")
        })
        .collect();
    let cells = of_class(&document, "cell");
    let spans: Vec<&str> = cells
        .iter()
        .map(|cell| cell.attribute("style").unwrap())
        .collect();
    assert_eq!(
        spans,
        [1, 1, 1, 1, 2].map(|columns| format!("grid-column: span {columns}"))
    );
    assert_eq!(
        rows,
        [
            "Kitchen | K1 | K2 | Bath | B1",
            "Bath (continued) | B2 | Hall | H1"
        ]
    );
}

#[test]
fn each_sample_of_the_legend_shows_what_it_explains() {
    let everything = Panel {
        tempered: true,
        glass: Glass::Obscure,
        screen: Some(Screen::Inside),
        handle: Some(Side::Right),
        ..sash(hinged(Side::Left))
    };
    let cells = [
        everything,
        Panel::new(Operation::Fixed),
        sash(Operation::Slides(Side::Left)),
    ];
    let cells = cells
        .into_iter()
        .map(|panel| cell("K1", one("28", "45", panel)))
        .collect();
    let text = page(&sheet(vec![("Kitchen", cells)]));
    let document = parsed(&text);
    let legend = &of_class(&document, "legend")[0];
    let own = |item: Node<'_, '_>| {
        let plain = ["frame", "sash", "glass", "glass-edge"];
        let parts = item
            .descendants()
            .filter_map(|node| node.attribute("data-part").map(str::to_owned));
        parts
            .filter(|part| !plain.contains(&part.as_str()))
            .collect::<Vec<String>>()
            .join(" ")
    };
    let shown: Vec<String> = legend.children().map(own).collect();
    let expected = [
        "hinge",
        "arrow-clearance arrow-shaft arrow-head",
        "fixed",
        "tempered",
        "obscure",
        "screen screen-mesh",
        "handle",
    ];
    assert_eq!(shown, expected);
}

#[test]
fn status_cautions_and_notes_are_printed_as_they_are() {
    let mut kitchen = cell("K1", window("28", "45"));
    kitchen.quantity = 3;
    kitchen.status = Some(Status {
        words: "does not hold".to_owned(),
        standing: Standing::DoesNotHold,
    });
    kitchen.lines = vec!["Interior: White".to_owned()];
    kitchen.cautions = vec!["Check the handle.".to_owned()];
    kitchen.notes = vec!["Made smaller.".to_owned()];
    let text = page(&sheet(vec![("Kitchen", vec![kitchen])]));
    let document = parsed(&text);
    let first = |class: &str| said(&of_class(&document, class)[0]);
    assert_eq!(first("fails"), "does not hold");
    assert_eq!(first("quantity"), "quantity 3");
    assert_eq!(first("cautions"), "Check the handle.");
    assert_eq!(first("notes"), "Made smaller.");
    assert_eq!(first("size"), "28 in x 45 in");
    let cell = first("cell");
    for line in [
        "Hinged left, opens out",
        "Frame and sash: White",
        "Interior: White",
    ] {
        assert!(cell.contains(line), "{cell}");
    }
    let everything = said(&document.root_element());
    for line in [
        "1 opening, 3 units",
        "Viewed from outside",
        "Dashed lines meet at the hinge side",
        "local code",
    ] {
        assert!(everything.contains(line), "{everything}");
    }
    assert!(
        !everything.contains("obscure"),
        "the legend lists what occurs only"
    );
}

#[test]
fn an_opening_that_cannot_be_drawn_says_why_and_the_others_are_drawn() {
    let missing = Cell {
        picture: Picture::NotDrawn("no width yet".to_owned()),
        ..cell("B1", window("1", "1"))
    };
    let cells = vec![
        cell("K1", window("2", "45")),
        missing,
        cell("K2", window("28", "45")),
    ];
    let text = page(&sheet(vec![("Kitchen", cells)]));
    let document = parsed(&text);
    let reasons: Vec<String> = of_class(&document, "missing").iter().map(said).collect();
    let refused = "Not drawn: the frame is `2 in` wide on each side, which leaves no opening in a unit of \
                   `2 in x 45 in`; check the size of the unit and the face of its frame";
    assert_eq!(reasons, [refused, "Not drawn: no width yet"]);
    assert_eq!(frames(&document).len(), 1);
}

#[test]
fn a_sheet_without_a_drawing_states_no_scale() {
    let missing = Cell {
        picture: Picture::NotDrawn("no width yet".to_owned()),
        ..cell("B1", window("28", "45"))
    };
    for rooms in [vec![("Bath", vec![missing])], Vec::new()] {
        let text = page(&sheet(rooms));
        assert!(!text.contains("scale:"), "{text}");
        assert!(of_class(&parsed(&text), "legend").is_empty());
    }
}

#[test]
fn texts_are_escaped_wherever_they_stand() {
    let evil = "<b>&\"'</b>\u{0}\u{202E}]]>";
    let told = "<b>&\"'</b> ]]>";
    let mut unit = window("28", "45");
    unit.frame.colour.name = evil.to_owned();
    let status = Some(Status {
        words: evil.to_owned(),
        standing: Standing::Undecided,
    });
    let texts = || vec![evil.to_owned()];
    let cell = Cell {
        status,
        lines: texts(),
        cautions: texts(),
        notes: texts(),
        ..cell(evil, unit)
    };
    let missing = Cell {
        picture: Picture::NotDrawn(evil.to_owned()),
        ..cell.clone()
    };
    let mut sheet = sheet(vec![(evil, vec![cell, missing])]);
    sheet.title = format!("{evil}</title></style><script>");
    sheet.lines = texts();
    sheet.notes = texts();
    sheet.floors[0].name = evil.to_owned();
    let text = page(&sheet);
    let document = parsed(&text);
    let elements = |name: &str| {
        document
            .descendants()
            .filter(|node| node.tag_name().name() == name)
            .count()
    };
    assert_eq!((elements("b"), elements("script"), elements("style")), (0, 0, 1));
    for class in ["tag", "open", "cautions", "notes", "sheet-notes"] {
        assert_eq!(said(&of_class(&document, class)[0]), told, "{class}");
    }
    assert!(said(&of_class(&document, "missing")[0]).ends_with(told));
    assert!(said(&of_class(&document, "cell")[0]).contains(&format!("Frame: {told}")));
}
