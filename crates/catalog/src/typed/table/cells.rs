//! Reads the cells of a column under the column's type: `white|dark` as options, `15<..36` as lengths.
//!
//! Of an attribute with the options white, grey (dark) and black (dark), the cell `dark` is the set of grey and black.
//! Of a length, `12|15..36` is two intervals, the first of one point.
//!
//! Always holds: cells that let the same values through under one column are the same cell: sets are sets, intervals
//! are sorted and do not touch. Only `*` is [`Cell::Any`]: it matches what is not known or not asked as well.
//! Cost: each distinct text is read once; a repeated one costs a look-up.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::ops::Range;

use astragal_model::measure_text::{AreaUnit, LengthUnit, format_area, format_length};
use astragal_model::{Cell, Id, Interval, LowerEnd, Number, Value, ValueType};

use super::reports::Reports;
use crate::finding::{Finding, Findings, Place};
use crate::nearest::{nearest, quoted_list};
use crate::sheet::spreadsheet_help;
use crate::source::Sources;
use crate::syntax::{self, Lower, Member, MemberKind, SyntaxError, parse_cell, range_help};
use crate::typed::literal::literal;
use crate::typed::{Names, PlacedText, Type};

/// The text of a cell, and where it stands when somebody asks.
pub(crate) struct CellText<'a> {
    pub(crate) text: &'a str,
    pub(crate) place: &'a dyn Fn() -> Place,
    /// Whether a finding about it would be said; one that is only counted looks for no near word.
    pub(crate) is_said: bool,
}

/// The cells of one column, each distinct one once.
pub(crate) struct CellReader<'a> {
    of: &'a Type,
    names: &'a Names,
    families: BTreeMap<Id, BTreeSet<Value>>,
    texts: HashMap<String, u32>,
    numbers: HashMap<Cell, u32>,
    cells: Vec<Cell>,
}

impl CellText<'_> {
    /// The place of some bytes of the text.
    ///
    /// The place of a cell holds its quotes; where the text has others inside, the whole cell is the place.
    pub(crate) fn at(&self, span: &Range<usize>) -> Place {
        let place = (self.place)();
        let quotes = place.span.len().saturating_sub(self.text.len());
        match quotes {
            0 => place.part(span.clone()),
            2 => place.part(span.start + 1..span.end + 1),
            _ => place,
        }
    }

    /// A finding about an error of syntax.
    pub(crate) fn syntax(&self, error: SyntaxError) -> Finding {
        let finding = Finding::error("SYNTAX", error.message).at(self.at(&error.span));
        match error.help {
            Some(help) => finding.with_help(help),
            None => finding,
        }
    }

    /// The text as one value of a type; `span` is the part of the cell that should be one.
    pub(crate) fn value(
        &self,
        raw: &str,
        span: &Range<usize>,
        of: &Type,
        names: &Names,
    ) -> Result<Value, Box<Finding>> {
        let place = self.at(span);
        if of.value_type == ValueType::Number
            && raw.contains(['e', 'E'])
            && Number::from_decimal(raw).is_some()
        {
            let message = format!("`{raw}` is a number with an exponent");
            let help = spreadsheet_help(raw).unwrap_or("write the number out: 1500, not 1.5e3");
            let finding = Finding::error("NUMBER_WITH_EXPONENT", message).at(place);
            return Err(Box::new(finding.with_help(help)));
        }
        let is_unknown = of
            .options
            .as_ref()
            .is_some_and(|domain| !domain.ids.contains(raw));
        if is_unknown && !self.is_said {
            let message = format!("unknown option `{raw}`");
            return Err(Box::new(Finding::error("UNKNOWN_OPTION", message).at(place)));
        }
        let scratch = Findings::new();
        let text = PlacedText::new(raw.to_owned(), place.clone(), &Sources::new());
        if let Some(value) = literal(&text, &(0..raw.len()), raw, of, names, &scratch) {
            return Ok(value);
        }
        let said = scratch.into_sorted(&Sources::new()).into_iter().next();
        let finding = said.unwrap_or_else(|| {
            Finding::error(
                "WRONG_VALUE",
                format!("found `{raw}`, expected {}", of.value_type.words()),
            )
        });
        let finding = finding.at(place);
        let damage = spreadsheet_help(raw).filter(|_| of.value_type != ValueType::Date);
        Err(Box::new(match range_help(raw).or(damage.map(str::to_owned)) {
            Some(help) => finding.with_help(help),
            None => finding,
        }))
    }
}

impl<'a> CellReader<'a> {
    /// A reader of a column that has read nothing yet.
    pub(crate) fn new(of: &'a Type, names: &'a Names) -> Self {
        let mut families: BTreeMap<Id, BTreeSet<Value>> = BTreeMap::new();
        let attribute = of.options.as_ref().and_then(|domain| domain.attribute);
        let shape = attribute.and_then(|attribute| names.attribute(attribute));
        for option in shape.iter().flat_map(|shape| shape.options.iter()) {
            for family in &option.families {
                families
                    .entry(family.clone())
                    .or_default()
                    .insert(Value::Option(option.id.clone()));
            }
        }
        Self {
            of,
            names,
            families,
            texts: HashMap::new(),
            numbers: HashMap::new(),
            cells: Vec::new(),
        }
    }

    /// The distinct cells that were read.
    pub(crate) fn into_cells(self) -> Vec<Cell> {
        self.cells
    }

    /// The number of a cell among the distinct ones; `None` means that a finding says why.
    pub(crate) fn read(&mut self, text: &CellText<'_>, reports: &mut Reports<'_>) -> Option<u32> {
        if let Some(number) = self.texts.get(text.text) {
            return Some(*number);
        }
        let cell = match parse_cell(text.text) {
            Ok(syntax::Cell::Any) => Cell::Any,
            Ok(syntax::Cell::Members(members)) => self.members(text, &members, reports)?,
            Ok(syntax::Cell::Blank) => {
                let finding = Finding::error("EMPTY_CELL", "found an empty cell, expected what it matches");
                reports.push(
                    finding
                        .at((text.place)())
                        .with_help("write `*` where anything may stand; of merged cells a spreadsheet saves only the first, so write it in every row"),
                );
                return None;
            }
            Err(error) => {
                let help = spreadsheet_help(text.text);
                let finding = text.syntax(error);
                reports.push(match help {
                    Some(help) => finding.with_help(help),
                    None => finding,
                });
                return None;
            }
        };
        let next = u32::try_from(self.cells.len()).unwrap_or(u32::MAX);
        let number = *self.numbers.entry(cell.clone()).or_insert(next);
        if number == next {
            self.cells.push(cell);
        }
        self.texts.insert(text.text.to_owned(), number);
        Some(number)
    }

    fn members(&self, text: &CellText<'_>, members: &[Member], reports: &mut Reports<'_>) -> Option<Cell> {
        let mut values = BTreeSet::new();
        let mut intervals = Vec::new();
        let mut is_whole = true;
        for member in members {
            let text = &CellText {
                is_said: reports.says_more(),
                ..*text
            };
            let read = match &member.kind {
                MemberKind::Text(word) => self
                    .word(text, word, &member.span)
                    .map(|more| values.extend(more)),
                MemberKind::Range { lower, upper } => self
                    .range(text, lower.as_ref(), upper.as_ref(), &member.span)
                    .map(|interval| intervals.push(interval)),
            };
            if let Err(finding) = read {
                is_whole = false;
                reports.push(*finding);
            }
        }
        if !is_whole {
            return None;
        }
        if intervals.is_empty() {
            return Some(Cell::OneOf(values.into()));
        }
        intervals.extend(values.into_iter().map(point));
        Some(Cell::Within(merged(intervals)))
    }

    /// The values that one word of a set stands for.
    fn word(
        &self,
        text: &CellText<'_>,
        word: &str,
        span: &Range<usize>,
    ) -> Result<BTreeSet<Value>, Box<Finding>> {
        if self.of.value_type == ValueType::Bool {
            return truth(text, word, span).map(|value| BTreeSet::from([value]));
        }
        let Some(domain) = &self.of.options else {
            return text
                .value(word, span, self.of, self.names)
                .map(|value| BTreeSet::from([value]));
        };
        match (domain.ids.get(word), self.families.get(word)) {
            (Some(id), None) => Ok(BTreeSet::from([Value::Option(id.clone())])),
            (None, Some(members)) => Ok(members.clone()),
            (Some(_), Some(_)) => {
                let message = format!("`{word}` is an option and a family of {}", domain.of);
                let finding = Finding::error("AMBIGUOUS_WORD", message).at(text.at(span));
                Err(Box::new(finding.with_help("rename the family")))
            }
            (None, None) if !text.is_said => {
                let message = format!("unknown option `{word}` of {}", domain.of);
                Err(Box::new(
                    Finding::error("UNKNOWN_OPTION", message).at(text.at(span)),
                ))
            }
            (None, None) => {
                let known = || domain.ids.iter().chain(self.families.keys()).map(Id::as_str);
                let what = if self.families.is_empty() {
                    "option"
                } else {
                    "option or family"
                };
                let message = format!("unknown {what} `{word}` of {}", domain.of);
                let help = match (range_help(word), spreadsheet_help(word), nearest(word, known())) {
                    (_, _, Some(near)) => {
                        format!("did you mean `{near}`? there are {}", quoted_list(known()))
                    }
                    (_, Some(help), None) => help.to_owned(),
                    _ if word
                        .split(['/', ';', '+', '&'])
                        .filter(|word| !word.is_empty())
                        .all(|word| known().any(|id| id == word.trim())) =>
                    {
                        let words: Vec<&str> = word.split(['/', ';', '+', '&']).map(str::trim).collect();
                        format!("several options are written `{}`", words.join("|"))
                    }
                    _ => format!("there are {}", quoted_list(known())),
                };
                let finding = Finding::error("UNKNOWN_OPTION", message).at(text.at(span));
                Err(Box::new(finding.with_help(help)))
            }
        }
    }

    fn range(
        &self,
        text: &CellText<'_>,
        lower: Option<&Lower>,
        upper: Option<&syntax::Placed>,
        span: &Range<usize>,
    ) -> Result<Interval, Box<Finding>> {
        if !self.of.value_type.is_ordered() {
            let message = format!("found a range, expected {}", self.of.value_type.words());
            let finding = Finding::error("RANGE_WITHOUT_ORDER", message).at(text.at(span));
            return Err(Box::new(finding.with_help("list what matches: `a|b|c`")));
        }
        let value = |end: &syntax::Placed| text.value(&end.text, &end.span, self.of, self.names);
        let low = lower.map(|lower| value(&lower.value)).transpose()?;
        let high = upper.map(value).transpose()?;
        let open = lower.is_some_and(|lower| lower.open);
        if let (Some(low), Some(high)) = (&low, &high)
            && (low > high || (open && low == high))
        {
            let unit = self.names.length_unit;
            let (low, high) = (shown_value(low, unit), shown_value(high, unit));
            let (message, help) = if open && low == high {
                (
                    format!("the range begins after {low} and ends there, so it holds nothing"),
                    "write `..` without `<` for this value alone",
                )
            } else {
                (
                    format!("the range begins at {low}, above its end {high}"),
                    "write the lower end first",
                )
            };
            let finding = Finding::error("EMPTY_RANGE", message).at(text.at(span));
            return Err(Box::new(finding.with_help(help)));
        }
        let lower = low.map(|value| LowerEnd { value, open });
        Ok(Interval { lower, upper: high })
    }
}

fn truth(text: &CellText<'_>, word: &str, span: &Range<usize>) -> Result<Value, Box<Finding>> {
    match word {
        "yes" => Ok(Value::Bool(true)),
        "no" => Ok(Value::Bool(false)),
        _ => {
            let finding = Finding::error("WRONG_VALUE", format!("found `{word}`, expected `yes` or `no`"));
            let help = match word.to_ascii_lowercase().as_str() {
                "yes" | "true" | "x" => "write `yes`",
                "no" | "false" | "-" => "write `no`",
                _ => "write `yes`, `no`, or `*` for whatever stands there",
            };
            Err(Box::new(finding.at(text.at(span)).with_help(help)))
        }
    }
}

/// The interval of one value.
fn point(value: Value) -> Interval {
    Interval {
        lower: Some(LowerEnd {
            value: value.clone(),
            open: false,
        }),
        upper: Some(value),
    }
}

/// The same values in intervals that are sorted and do not touch.
fn merged(mut intervals: Vec<Interval>) -> Vec<Interval> {
    let start = |interval: &Interval| interval.lower.clone().map(|end| (end.value, end.open));
    intervals.sort_by_key(start);
    let mut merged: Vec<Interval> = Vec::new();
    for next in intervals {
        match merged.last_mut() {
            Some(last) if touches(last, &next) => {
                let ends_later = match (&last.upper, &next.upper) {
                    (None, _) => false,
                    (_, None) => true,
                    (Some(last), Some(next)) => next > last,
                };
                if ends_later {
                    last.upper = next.upper;
                }
            }
            _ => merged.push(next),
        }
    }
    merged
}

/// Whether an interval that begins no earlier continues this one. The upper end of this one belongs to it.
fn touches(last: &Interval, next: &Interval) -> bool {
    match (&last.upper, &next.lower) {
        (None, _) | (_, None) => true,
        (Some(upper), Some(lower)) => lower.value <= *upper,
    }
}

/// A value as a person writes it in a cell.
pub(crate) fn shown_value(value: &Value, unit: LengthUnit) -> String {
    match value {
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::Number(number) => number.to_string(),
        Value::Length(inches) => format_length(inches, unit),
        Value::Area(inches) if matches!(unit, LengthUnit::Inch | LengthUnit::Foot) => {
            format_area(inches, AreaUnit::SquareFoot)
        }
        Value::Area(inches) => format_area(inches, AreaUnit::SquareMetre),
        Value::Date(date) => date.to_string(),
        Value::Option(id) => format!("`{id}`"),
        Value::NotAsked => "not asked".to_owned(),
    }
}
