//! Says conditions and formulas in words: `operation == "casement"` is "Operation is Casement".
//!
//! The words are made from the tree that the engine evaluates, not from the text of the file, so that they say what was
//! understood: families are written out, and so are `any`, `all` and `sum` over parts.
//!
//! Always holds: parentheses stand wherever `and` and `or` could be taken in two ways.
//! LIMIT: the depth of an expression, 64, is kept by the reader of catalog files.

use astragal_model::{
    AttributeIndex, Catalog, Comparison, Expression, Function, Id, MeasuringUnit, Number, PartIndex, Subject,
    Value, ValueType,
};

/// Speaks about one catalog and, in what is `per` part, about one part.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Words<'a> {
    catalog: &'a Catalog,
    part: Option<PartIndex>,
}

/// How tightly words hold together, loosest first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Binding {
    Choice,
    Or,
    And,
    Relation,
    Sum,
    Product,
    Single,
}

impl<'a> Words<'a> {
    /// Words for this catalog; in what is `per` part, `part` needs no mention.
    pub(crate) fn new(catalog: &'a Catalog, part: Option<PartIndex>) -> Self {
        Self { catalog, part }
    }

    /// A condition, or a formula.
    pub(crate) fn say(self, expression: &Expression) -> String {
        self.text(expression, Binding::Choice, None)
    }

    /// A formula that gives an option of this attribute.
    pub(crate) fn say_option(self, expression: &Expression, attribute: AttributeIndex) -> String {
        self.text(expression, Binding::Choice, Some(Subject::Attribute(attribute)))
    }

    /// What a person calls a subject; the part that is spoken of goes without saying.
    pub(crate) fn label(self, subject: Subject) -> String {
        let declarations = self.catalog.declarations();
        match subject {
            Subject::Attribute(index) => {
                let attribute = declarations.attributes.at(index);
                self.own(attribute.part, &attribute.label, subject)
            }
            Subject::Figure(index) => {
                let figure = declarations.figures.at(index);
                self.own(figure.part, &figure.label, subject)
            }
            _ => self.catalog.label_of(subject),
        }
    }

    fn own(self, part: Option<PartIndex>, label: &str, subject: Subject) -> String {
        if part.is_some() && part == self.part {
            label.to_owned()
        } else {
            self.catalog.label_of(subject)
        }
    }

    /// The options of an attribute or of an enumerated fact, in file order; none for anything else.
    pub(crate) fn options(self, subject: Subject) -> Vec<Id> {
        let declarations = self.catalog.declarations();
        match subject {
            Subject::Attribute(index) => {
                let options = declarations.attributes.at(index).options.iter();
                options.map(|option| option.id.clone()).collect()
            }
            Subject::Fact(index) => {
                let options = declarations.facts.at(index).options.iter();
                options.map(|(id, _)| id.clone()).collect()
            }
            _ => Vec::new(),
        }
    }

    /// A property of the option of an attribute.
    pub(crate) fn property(self, attribute: AttributeIndex, property: &Id) -> String {
        format!("{property} of {}", self.label(Subject::Attribute(attribute)))
    }

    /// A value beside a subject: an option of it by its label.
    pub(crate) fn value(self, value: &Value, beside: Option<Subject>) -> String {
        match (beside, value) {
            (Some(subject), Value::Option(_) | Value::Number(_)) => self.catalog.show(subject, value),
            (None, Value::Option(option)) => option.to_string(),
            (_, Value::Bool(true)) => "yes".to_owned(),
            (_, Value::Bool(false)) => "no".to_owned(),
            (_, Value::Date(date)) => date.to_string(),
            (_, Value::NotAsked) => "not asked".to_owned(),
            (_, Value::Length(number)) => self.catalog.show_magnitude(ValueType::Length, number),
            (_, Value::Area(number)) => self.catalog.show_magnitude(ValueType::Area, number),
            (None, Value::Number(number)) => number.to_string(),
        }
    }

    fn text(self, expression: &Expression, place: Binding, beside: Option<Subject>) -> String {
        let (binding, text) = self.bound(expression, beside);
        if binding < place {
            format!("({text})")
        } else {
            text
        }
    }

    fn bound(self, expression: &Expression, beside: Option<Subject>) -> (Binding, String) {
        let say = |inner: &Expression, place| self.text(inner, place, beside);
        match expression {
            Expression::Literal(value) => (Binding::Single, self.value(value, beside)),
            Expression::Read(subject) => (Binding::Single, self.label(*subject)),
            Expression::Property(attribute, property) => {
                (Binding::Single, self.property(*attribute, property))
            }
            Expression::IsAsked(attribute) => {
                let label = self.label(Subject::Attribute(*attribute));
                (Binding::Relation, format!("{label} is asked"))
            }
            Expression::Not(inner) => (Binding::Relation, self.denied(inner)),
            Expression::And(parts) => (Binding::And, self.all(parts)),
            Expression::Or(parts) => (Binding::Or, self.any(parts)),
            Expression::Compare(comparison, left, right) => (
                Binding::Relation,
                format!(
                    "{} {}",
                    self.text(left, Binding::Sum, subject_of(right)),
                    self.compared(*comparison, left, right)
                ),
            ),
            Expression::In(item, members) => (Binding::Relation, self.member(item, members, false)),
            Expression::Add(terms) => (Binding::Sum, self.sum(terms)),
            Expression::Negate(inner) => (Binding::Product, format!("−{}", say(inner, Binding::Single))),
            Expression::Multiply(left, right) => (
                Binding::Product,
                format!(
                    "{} × {}",
                    say(left, Binding::Product),
                    say(right, Binding::Product)
                ),
            ),
            Expression::Divide(inner, by) => (
                Binding::Product,
                format!("{} / {by}", say(inner, Binding::Product)),
            ),
            Expression::Conditional(condition, then, otherwise) => (
                Binding::Choice,
                format!(
                    "{} if {}; otherwise {}",
                    say(then, Binding::Or),
                    self.condition(condition, Binding::Or),
                    say(otherwise, Binding::Choice)
                ),
            ),
            Expression::Call(function, arguments) => self.call(*function, arguments, beside),
        }
    }

    /// What is either so or not: a fact that stands alone is said to be so.
    fn condition(self, expression: &Expression, place: Binding) -> String {
        match expression {
            Expression::Read(subject) => format!("{} is yes", self.label(*subject)),
            Expression::Literal(Value::Bool(true)) => "always".to_owned(),
            Expression::Literal(Value::Bool(false)) => "never".to_owned(),
            _ => self.text(expression, place, None),
        }
    }

    fn denied(self, inner: &Expression) -> String {
        match inner {
            Expression::Read(subject) => format!("{} is no", self.label(*subject)),
            Expression::IsAsked(attribute) => {
                format!("{} is not asked", self.label(Subject::Attribute(*attribute)))
            }
            Expression::In(item, members) => self.member(item, members, true),
            _ => format!("not ({})", self.condition(inner, Binding::Choice)),
        }
    }

    /// Parts joined by `and`; what is said of one thing twice is said in one breath.
    fn all(self, parts: &[Expression]) -> String {
        let mut text = String::new();
        let mut before: Option<&Expression> = None;
        for part in parts {
            if !text.is_empty() {
                text.push_str(" and ");
            }
            match (part, before) {
                (
                    Expression::Compare(comparison, left, right),
                    Some(Expression::Compare(_, left_before, _)),
                ) if left == left_before => text.push_str(&self.compared(*comparison, left, right)),
                _ => text.push_str(&self.condition(part, Binding::Relation)),
            }
            before = Some(part);
        }
        if text.is_empty() {
            "always".to_owned()
        } else {
            text
        }
    }

    /// Parts joined by `or`; what is denied in front is the condition of the rest.
    fn any(self, parts: &[Expression]) -> String {
        if let [Expression::Not(condition), rest @ ..] = parts
            && !rest.is_empty()
        {
            let condition = self.condition(condition, Binding::Choice);
            return format!("if {condition}, {}", self.any(rest));
        }
        let said: Vec<String> = parts
            .iter()
            .map(|part| self.condition(part, Binding::Relation))
            .collect();
        if said.is_empty() {
            "never".to_owned()
        } else {
            said.join(" or ")
        }
    }

    /// What is said of the left side: "is at most 36 in".
    fn compared(self, comparison: Comparison, left: &Expression, right: &Expression) -> String {
        let verb = match comparison {
            Comparison::Equal => "is",
            Comparison::NotEqual => "is not",
            Comparison::Less => "is under",
            Comparison::LessOrEqual => "is at most",
            Comparison::Greater => "is over",
            Comparison::GreaterOrEqual => "is at least",
        };
        format!("{verb} {}", self.text(right, Binding::Sum, subject_of(left)))
    }

    fn member(self, item: &Expression, members: &[Expression], is_denied: bool) -> String {
        let beside = subject_of(item);
        let members: Vec<String> = members
            .iter()
            .map(|member| self.text(member, Binding::Sum, beside))
            .collect();
        let item = self.text(item, Binding::Sum, None);
        match (members.as_slice(), is_denied) {
            ([], false) => "never".to_owned(),
            ([], true) => "always".to_owned(),
            ([one], false) => format!("{item} is {one}"),
            ([one], true) => format!("{item} is not {one}"),
            (_, false) => format!("{item} is one of {}", members.join(", ")),
            (_, true) => format!("{item} is none of {}", members.join(", ")),
        }
    }

    fn sum(self, terms: &[Expression]) -> String {
        let mut text = String::new();
        for term in terms {
            let turned = negative_literal(term);
            let (sign, term) = match (term, &turned) {
                (Expression::Negate(inner), _) => ("−", &**inner),
                (_, Some(turned)) => ("−", turned),
                _ => ("+", term),
            };
            match (text.is_empty(), sign) {
                (true, "−") => text.push('−'),
                (true, _) => {}
                (false, sign) => {
                    text.push(' ');
                    text.push_str(sign);
                    text.push(' ');
                }
            }
            text.push_str(&self.text(term, Binding::Product, None));
        }
        text
    }

    fn call(
        self,
        function: Function,
        arguments: &[Expression],
        beside: Option<Subject>,
    ) -> (Binding, String) {
        let say = |expression: &Expression| self.text(expression, Binding::Choice, beside);
        let listed = || arguments.iter().map(say).collect::<Vec<_>>().join(", ");
        let first = arguments.first();
        let stepped = |how: &str| {
            let inner = first.map(|first| self.text(first, Binding::Product, None));
            let step = arguments.get(1).map(say);
            format!(
                "{} rounded {how} {}",
                inner.unwrap_or_default(),
                step.unwrap_or_default()
            )
        };
        match function {
            Function::Min => (Binding::Single, format!("the least of ({})", listed())),
            Function::Max => (Binding::Single, format!("the greatest of ({})", listed())),
            Function::Absolute => (Binding::Single, format!("the size of ({})", listed())),
            Function::FloorTo => (Binding::Relation, stepped("down to a multiple of")),
            Function::CeilTo => (Binding::Relation, stepped("up to a multiple of")),
            Function::RoundTo => (Binding::Relation, stepped("to the nearest multiple of")),
            Function::Trade(function) => (Binding::Single, format!("{} ({})", function.words(), listed())),
            Function::InUnit(unit) => {
                let inner = first.map(|first| self.text(first, Binding::Single, None));
                (
                    Binding::Product,
                    format!("{} in {}", inner.unwrap_or_default(), unit_words(unit)),
                )
            }
        }
    }
}

/// A condition that stands by itself: a fact alone is said to be so.
pub(crate) fn say_condition(words: Words<'_>, expression: &Expression) -> String {
    words.condition(expression, Binding::Choice)
}

/// A number as it is written: exact.
pub(crate) fn exact(number: &Number) -> String {
    number.to_string()
}

fn subject_of(expression: &Expression) -> Option<Subject> {
    if let Expression::Read(subject) = expression {
        Some(*subject)
    } else {
        None
    }
}

/// A written value below zero, with its sign turned.
fn negative_literal(expression: &Expression) -> Option<Expression> {
    let value = match expression {
        Expression::Literal(Value::Number(number)) if number.is_negative() => Value::Number(number.abs()),
        Expression::Literal(Value::Length(number)) if number.is_negative() => Value::Length(number.abs()),
        Expression::Literal(Value::Area(number)) if number.is_negative() => Value::Area(number.abs()),
        _ => return None,
    };
    Some(Expression::Literal(value))
}

fn unit_words(unit: MeasuringUnit) -> &'static str {
    match unit {
        MeasuringUnit::Inch => "inches",
        MeasuringUnit::Foot => "feet",
        MeasuringUnit::Millimetre => "millimetres",
        MeasuringUnit::Metre => "metres",
        MeasuringUnit::SquareInch => "square inches",
        MeasuringUnit::SquareFoot => "square feet",
        MeasuringUnit::SquareMetre => "square metres",
    }
}
