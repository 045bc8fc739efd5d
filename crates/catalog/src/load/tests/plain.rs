//! A catalog of every kind of declaration, and headers.

use super::*;

/// One of each kind, `COLOUR` standing for what it says.
const EVERYTHING: &str = r#"
[[authority]]
id = "association"
label = "Association"
COLOUR
[[attribute]]
id = "interior"
label = "Interior"
section = "Colour"
options = [{ id = "white", label = "White", plant_code = "01", properties = { gloss = 30, sheen = "1/8", area = "2 ft2", fresh = true, since = 2020-01-01 } }, { id = "grey" }]
standard = 'exterior == "white" ? "white" : "grey"'
applies_when = 'exterior != "grey"'
audience = "plant"

[[measure]]
id = "opening_width"
label = "Opening width"

[[measure]]
id = "panes"
label = "Panes"
type = "number"
step = 1

[[measure]]
id = "clear"
label = "Clear width"
step = "none"

[[site_fact]]
id = "zone"
label = "Zone"
of = "house"
type = "enumeration"
options = ["north", { id = "south", label = "South" }]

[[figure]]
id = "unit_width"
label = "Unit width"
formula = 'floor_to(opening_width - "1/4", "1/8")'
show = true

[[figure]]
id = "panes_doubled"
label = "Panes, doubled"
formula = "panes * 2"
type = "number"
unit = "panes"

[[rule]]
id = "width"
authority = "association"
effect = "warn"
when = 'exterior == "white"'
require = 'unit_width >= "15"'
message = "At least 15 in; this one is {unit_width}."
basis = "somewhere"
waivable = true

[[price]]
id = "base"
label = "Base"
grid = "base"
axes = ["unit_width"]
beyond = "sign_off"

[[price]]
id = "colour"
label = "Colour"
by = ["exterior"]
class = "labour"

[[price]]
id = "screen"
label = "Screen"
quantity = "panes + 1"

[[price]]
id = "share"
label = "Share"
percent_of = ["base", "colour"]

[[notice]]
id = "lead"
kind = "warranty"
when = 'zone == "north"'
text = "Mind {exterior}."

[[example]]
id = "too-narrow"
picks = [{ attribute = "exterior", option = "white" }]
measures = { opening_width = { size = "14", deducted_by = "nobody" } }
facts = { zone = "unknown" }
date = 2026-11-25
breaks = ["width"]
undecided = []
"#;

#[test]
fn a_catalog_of_every_kind_of_declaration_loads() {
    check(
        &EVERYTHING.replace("COLOUR", COLOUR),
        expect![[r#"
            exterior: white grey; standard Option(`white`)
            interior: white grey; standard Formula(Conditional(Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))), Literal(Option(`white`)), Literal(Option(`grey`)))) when Compare(NotEqual, Read(Attribute(AttributeIndex(0))), Literal(Option(`grey`)))
            opening_width: Length step Some(0.0625)
            panes: Number step Some(1)
            clear: Length step None
            zone: Option of House [(`north`, "north"), (`south`, "South")]
            unit_width: Length
            panes_doubled: Number
            width None by association when Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))) At least 15 in; this one is {unit_width}.
            base Goods Grid { grid: `base`, axes: [FigureIndex(0)], beyond: SignOff } quantity None
            colour Labour By([AttributeIndex(0)]) quantity None
            screen Goods Flat quantity Some(Add([Read(Measure(MeasureIndex(1))), Literal(Number(1))]))
            share Goods Percent({`base`, `colour`}) quantity None
            lead Warranty when Compare(Equal, Read(Fact(FactIndex(0))), Literal(Option(`north`))) Mind {exterior}.
            too-narrow: [Pick { attribute: AttributeIndex(0), option: `white`, quoted: None }] breaks {`width`} undecided Some({})
        "#]],
    );
}

#[test]
fn a_catalog_says_what_it_is() {
    check_files(
        &[("c/catalog.toml", "format = 1\n")],
        expect![[r#"
        c/catalog.toml:1:1 `` MISSING_KEY catalog file lacks `catalog`
          help: add `catalog`
    "#]],
    );
    check_files(
        &[(
            "c/catalog.toml",
            "[catalog]\nid = \"C\"\nlength = { unit = \"inch\", step = \"0\" }\nlable = 1\n",
        )],
        expect![[r#"
            c/catalog.toml:1:1 `` UNKNOWN_FORMAT catalog file lacks `format`
              help: add `format = 1` at the top
            c/catalog.toml:2:6 `"C"` BAD_ID `C` is not an id
              help: write `c`; begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
            c/catalog.toml:3:19 `"inch"` UNKNOWN_WORD `unit` is `inch`; expected one of `in`, `ft`, `mm`, `cm`, `m`
              help: write one of these words
            c/catalog.toml:4:1 `lable` UNKNOWN_KEY unknown key `lable` in catalog `C`
              help: did you mean `label`?
        "#]],
    );
}

#[test]
fn every_unknown_key_is_a_finding_wherever_it_stands() {
    check(
        "rulez = 1\n[[authority]]\nid = \"a\"\nlabel = \"A\"\nx = 1\n[[option_list]]\nid = \"l\"\noptions = [{ id = \"o\", famlies = [] }]\nx = 1\n[[part]]\nid = \"p\"\nlabel = \"P\"\nkind = \"sash\"\nx = 1\n[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = \"l\"\nstandart = \"o\"\nstandard = \"o\"\n[[measure]]\nid = \"m\"\nlabel = \"M\"\nx = 1\n[[site_fact]]\nid = \"f\"\nlabel = \"F\"\nof = \"room\"\ntype = \"bool\"\nx = 1\n[[figure]]\nid = \"g\"\nlabel = \"G\"\nformula = \"1\"\nx = 1\n[[rule]]\nid = \"r\"\nrequire = \"true\"\nmessage = \"m\"\nx = 1\n[[price]]\nid = \"i\"\nlabel = \"I\"\nx = 1\n[[notice]]\nid = \"n\"\ntext = \"t\"\nx = 1\n[[example]]\nid = \"e\"\ndate = 2026-11-25\nx = 1\n",
        expect![[r#"
            c/catalog.toml:6:1 `rulez` UNKNOWN_KEY unknown key `rulez` in catalog `c`
              help: known keys are `id`, `label`, `length`
            c/catalog.toml:10:1 `x` UNKNOWN_KEY unknown key `x` in authority `a`
              help: known keys are `id`, `label`
            c/catalog.toml:13:24 `famlies` UNKNOWN_KEY unknown key `famlies` in option `o`
              help: did you mean `families`?
            c/catalog.toml:14:1 `x` UNKNOWN_KEY unknown key `x` in option list `l`
              help: known keys are `id`, `options`
            c/catalog.toml:19:1 `x` UNKNOWN_KEY unknown key `x` in part `p`
              help: known keys are `id`, `kind`, `label`, `when`
            c/catalog.toml:24:1 `standart` UNKNOWN_KEY unknown key `standart` in attribute `a`
              help: did you mean `standard`?
            c/catalog.toml:29:1 `x` UNKNOWN_KEY unknown key `x` in measure `m`
              help: known keys are `id`, `label`, `type`, `step`, `least`, `most`, `taken_as`
            c/catalog.toml:35:1 `x` UNKNOWN_KEY unknown key `x` in site fact `f`
              help: known keys are `id`, `label`, `of`, `type`, `options`, `least`, `most`, `step`, `taken_as`
            c/catalog.toml:40:1 `x` UNKNOWN_KEY unknown key `x` in figure `g`
              help: known keys are `id`, `label`, `formula`, `table`, `keys`, `value`, `match`, `type`, `unit`, `show`, `per`
            c/catalog.toml:45:1 `x` UNKNOWN_KEY unknown key `x` in rule `r`
              help: known keys are `id`, `authority`, `effect`, `when`, `require`, `table`, `rows`, `layout`, `down`, `across`, `message`, `basis`, `waivable`, `per`
            c/catalog.toml:49:1 `x` UNKNOWN_KEY unknown key `x` in price item `i`
              help: known keys are `id`, `label`, `class`, `tax_class`, `when`, `grid`, `by`, `percent_of`, `axes`, `beyond`, `quantity`, `per`
            c/catalog.toml:53:1 `x` UNKNOWN_KEY unknown key `x` in notice `n`
              help: known keys are `id`, `kind`, `when`, `text`, `basis`, `per`
            c/catalog.toml:57:1 `x` UNKNOWN_KEY unknown key `x` in example `e`
              help: known keys are `id`, `picks`, `measures`, `facts`, `date`, `breaks`, `undecided`, `room_breaks`, `room_undecided`, `notices`, `total`
        "#]],
    );
}

#[test]
fn what_a_declaration_lacks_is_named() {
    check(
        "[[option_list]]\nid = \"l\"\n[[part]]\n[[attribute]]\n[[measure]]\n[[site_fact]]\n[[figure]]\n[[rule]]\n[[price]]\n[[notice]]\n[[example]]\n",
        expect![[r#"
            c/catalog.toml:6:1 `[[option_list]]` MISSING_KEY option list `l` lacks `options`
              help: add `options`
            c/catalog.toml:8:1 `[[part]]` MISSING_KEY part lacks `id`
              help: add `id`
            c/catalog.toml:8:1 `[[part]]` MISSING_KEY part lacks `kind`
              help: add `kind`
            c/catalog.toml:8:1 `[[part]]` MISSING_KEY part lacks `label`
              help: add `label`
            c/catalog.toml:9:1 `[[attribute]]` MISSING_KEY attribute lacks `id`
              help: add `id`
            c/catalog.toml:9:1 `[[attribute]]` MISSING_KEY attribute lacks `label`
              help: add `label`
            c/catalog.toml:9:1 `[[attribute]]` MISSING_KEY attribute lacks `options`
              help: add `options`
            c/catalog.toml:9:1 `[[attribute]]` MISSING_KEY attribute lacks `standard`
              help: add `standard`
            c/catalog.toml:10:1 `[[measure]]` MISSING_KEY measure lacks `id`
              help: add `id`
            c/catalog.toml:10:1 `[[measure]]` MISSING_KEY measure lacks `label`
              help: add `label`
            c/catalog.toml:11:1 `[[site_fact]]` MISSING_KEY site fact lacks `id`
              help: add `id`
            c/catalog.toml:11:1 `[[site_fact]]` MISSING_KEY site fact lacks `label`
              help: add `label`
            c/catalog.toml:11:1 `[[site_fact]]` MISSING_KEY site fact lacks `of`
              help: add `of`
            c/catalog.toml:11:1 `[[site_fact]]` MISSING_KEY site fact lacks `type`
              help: add `type`
            c/catalog.toml:12:1 `[[figure]]` MISSING_KEY figure lacks `formula` or `table`
              help: add `formula` or `table`
            c/catalog.toml:12:1 `[[figure]]` MISSING_KEY figure lacks `id`
              help: add `id`
            c/catalog.toml:12:1 `[[figure]]` MISSING_KEY figure lacks `label`
              help: add `label`
            c/catalog.toml:13:1 `[[rule]]` MISSING_KEY rule lacks `id`
              help: add `id`
            c/catalog.toml:13:1 `[[rule]]` MISSING_KEY rule lacks `message`
              help: add `message`
            c/catalog.toml:13:1 `[[rule]]` MISSING_KEY rule lacks `require` or `table`
              help: add `require` or `table`
            c/catalog.toml:14:1 `[[price]]` MISSING_KEY price item lacks `id`
              help: add `id`
            c/catalog.toml:14:1 `[[price]]` MISSING_KEY price item lacks `label`
              help: add `label`
            c/catalog.toml:15:1 `[[notice]]` MISSING_KEY notice lacks `id`
              help: add `id`
            c/catalog.toml:15:1 `[[notice]]` MISSING_KEY notice lacks `text`
              help: add `text`
            c/catalog.toml:16:1 `[[example]]` MISSING_KEY example lacks `date`
              help: add `date`
            c/catalog.toml:16:1 `[[example]]` MISSING_KEY example lacks `id`
              help: add `id`
        "#]],
    );
}

#[test]
fn a_value_of_the_wrong_type_is_named_and_not_missed_twice() {
    check(
        "[[attribute]]\nid = \"a\"\nlabel = 1\noptions = 5\nstandard = true\napplies_when = 3\naudience = \"dealer\"\nper = 1\n[[rule]]\nid = \"r\"\nrequire = true\nmessage = []\nwaivable = \"yes\"\neffect = \"stop\"\n",
        expect![[r#"
            c/catalog.toml:8:9 `1` WRONG_TYPE `label` is a whole number; expected text
              help: put it in quotes
            c/catalog.toml:9:11 `5` WRONG_TYPE `options` is a whole number; expected a list
            c/catalog.toml:10:12 `true` WRONG_TYPE `standard` is true; expected text
            c/catalog.toml:11:16 `3` WRONG_TYPE `applies_when` is a whole number; expected text
              help: put it in quotes
            c/catalog.toml:12:12 `"dealer"` UNKNOWN_WORD `audience` is `dealer`; expected one of `customer`, `plant`
              help: write one of these words
            c/catalog.toml:13:7 `1` WRONG_TYPE `per` is a whole number; expected text
              help: put it in quotes
            c/catalog.toml:16:11 `true` WRONG_TYPE `require` is true; expected text
            c/catalog.toml:17:11 `[]` WRONG_TYPE `message` is an array; expected text
            c/catalog.toml:18:12 `"yes"` WRONG_TYPE `waivable` is text; expected true or false
              help: write `true` without quotes
            c/catalog.toml:19:10 `"stop"` UNKNOWN_WORD `effect` is `stop`; expected one of `block`, `warn`, `sign_off`
              help: write one of these words
        "#]],
    );
}
