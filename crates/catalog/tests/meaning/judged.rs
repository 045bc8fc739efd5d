//! Short questions about one judged unit, each answered with text.

use std::rc::Rc;

use astragal_catalog::order::OrderFile;
use astragal_model::{
    Authorities, Choice, Id, ItemState, Judgement, Opening, Origin, Outcome, RoomFinding, RoomStanding,
    RoomState, RoomUnit, RuleFinding, RuleName, RuleState, Setting, Standing, Subject, Total, Unit, Verdict,
    Wants, fill, judge, judge_room,
};

/// The unit of the one opening of an order, filled and judged.
pub(crate) struct Judged {
    file: Rc<OrderFile>,
    authorities: Authorities,
    unit: Unit,
    judgement: Judgement,
}

impl Judged {
    pub(crate) fn of(file: OrderFile, left_out: &[String]) -> Judged {
        let authorities = Authorities {
            left_out: left_out.iter().map(|id| Id::new(id)).collect(),
        };
        let file = Rc::new(file);
        let unit = fill(
            &setting(&file, &authorities),
            &file.order.openings[0].units[0].picks,
        );
        Judged::with(file, authorities, unit)
    }

    fn with(file: Rc<OrderFile>, authorities: Authorities, unit: Unit) -> Judged {
        let judgement = judge(&setting(&file, &authorities), &unit);
        Judged {
            file,
            authorities,
            unit,
            judgement,
        }
    }

    /// The same in everything but these choices, each written as [`Judged::value`] answers.
    pub(crate) fn given(&self, choices: &[(&str, &str)]) -> Judged {
        let mut unit = self.unit.clone();
        for (name, choice) in choices {
            let choice = match *choice {
                "open" => Choice::Open,
                "not asked" => Choice::NotAsked,
                written => match written.strip_suffix(" (standard)") {
                    Some(option) => Choice::standard(option),
                    None => Choice::picked(written.strip_suffix(" (picked)").unwrap_or(written)),
                },
            };
            unit.choices
                .put(self.catalog().attribute_named(name).unwrap(), choice);
        }
        Judged::with(Rc::clone(&self.file), self.authorities.clone(), unit)
    }

    pub(crate) fn catalog(&self) -> &astragal_model::Catalog {
        &self.file.catalogs[&Id::new("c")].catalog.catalog
    }

    pub(crate) fn opening(&self) -> &Opening {
        &self.file.order.openings[0]
    }

    /// The findings of rules that bind and are broken; those without a row say so.
    pub(crate) fn broken(&self) -> Vec<String> {
        self.rules(|finding| match (&finding.standing, &finding.state) {
            (Standing::Binds, RuleState::Broken) => Some(self.name(finding)),
            (Standing::Binds, RuleState::NoRow(_)) => Some(format!("{} (no row)", self.name(finding))),
            _ => None,
        })
    }

    /// The rules that bind and cannot be decided, with what is wanted.
    pub(crate) fn undecided(&self) -> Vec<String> {
        self.rules(|finding| match (&finding.standing, &finding.state) {
            (Standing::Binds, RuleState::Undecided(wants)) => {
                Some(format!("{}: {}", self.name(finding), self.wants(wants)))
            }
            _ => None,
        })
    }

    /// The findings that do not bind, with what follows from them.
    pub(crate) fn not_binding(&self) -> Vec<String> {
        self.rules(|finding| {
            let standing = match finding.standing {
                Standing::Binds => return None,
                Standing::Warns => "warns",
                Standing::SignOff => "wants a sign-off",
                Standing::Waived(_) => "is waived",
                Standing::NotApplied => "is not applied",
            };
            let state = match finding.state {
                RuleState::Undecided(_) => " undecided",
                RuleState::NoRow(_) => " without a row",
                RuleState::Broken => "",
            };
            Some(format!("{} {standing}{state}", self.name(finding)))
        })
    }

    /// What the requirement of a rule without `when` comes to.
    pub(crate) fn rule(&self, id: &str) -> String {
        let mut of_rule = self
            .judgement
            .rules
            .iter()
            .filter(|finding| finding.id.as_str() == id);
        let state = of_rule.next().map(|finding| &finding.state);
        assert!(of_rule.next().is_none(), "two findings of `{id}`");
        match state {
            None => "true".to_owned(),
            Some(RuleState::Broken) => "false".to_owned(),
            Some(RuleState::NoRow(_)) => "undefined".to_owned(),
            Some(RuleState::Undecided(wants)) => format!("unknown: {}", self.wants(wants)),
        }
    }

    /// What the findings of a rule say in words.
    pub(crate) fn message(&self, id: &str) -> String {
        let of_rule = self
            .judgement
            .rules
            .iter()
            .filter(|finding| finding.id.as_str() == id);
        of_rule
            .map(|finding| finding.message.as_str())
            .collect::<Vec<_>>()
            .join("\n")
    }

    /// The standards that the finding of a rule names as standing against picks.
    pub(crate) fn standards_against_picks(&self, id: &str) -> Vec<String> {
        let of_rule = self
            .judgement
            .rules
            .iter()
            .filter(|finding| finding.id.as_str() == id);
        let attributes = of_rule.flat_map(|finding| &finding.standards_against_picks);
        attributes
            .map(|attribute| self.catalog().name_of(Subject::Attribute(*attribute)))
            .collect()
    }

    /// `white (standard)`, `white (picked)`, `not asked` or `open`.
    pub(crate) fn value(&self, attribute: &str) -> String {
        match self
            .unit
            .choices
            .at(self.catalog().attribute_named(attribute).unwrap())
        {
            Choice::Open => "open".to_owned(),
            Choice::NotAsked => "not asked".to_owned(),
            Choice::Chosen {
                option,
                origin: Origin::Standard,
            } => format!("{option} (standard)"),
            Choice::Chosen {
                option,
                origin: Origin::Picked { .. },
            } => format!("{option} (picked)"),
            Choice::Chosen {
                option,
                origin: Origin::Completed,
            } => format!("{option} (filled in)"),
        }
    }

    /// A figure as it is shown, or what is wanted to know it.
    pub(crate) fn figure(&self, name: &str) -> String {
        let catalog = self.catalog();
        let of_name =
            |figure: &&astragal_model::FigureFinding| catalog.name_of(Subject::Figure(figure.figure)) == name;
        let finding = self.judgement.figures.iter().find(of_name).unwrap();
        match &finding.outcome {
            Outcome::Known(value) => catalog.show(Subject::Figure(finding.figure), value),
            Outcome::Unknown(wants) => format!("unknown: {}", self.wants(wants)),
            Outcome::Undefined(_) => "undefined".to_owned(),
        }
    }

    /// The lines of an item: amount, and whether it is standard; nothing when it is not incurred.
    pub(crate) fn item(&self, id: &str) -> Vec<String> {
        let items = &self.catalog().declarations().items;
        let lines = self
            .judgement
            .items
            .iter()
            .filter(|line| items.at(line.item).id.as_str() == id);
        let shown = lines.map(|line| match &line.state {
            ItemState::Amount(money) => {
                format!(
                    "{} {}",
                    money.grouped(),
                    if line.standard { "standard" } else { "upcharge" }
                )
            }
            ItemState::Unknown(wants) => format!("unknown: {}", self.wants(wants)),
            ItemState::NoPrice => "no price".to_owned(),
        });
        shown.collect()
    }

    /// The steps after all items, with the running total.
    pub(crate) fn tail(&self) -> Vec<String> {
        let steps = self.judgement.tail.iter();
        steps
            .map(|step| {
                format!(
                    "{} {} makes {}",
                    step.id,
                    step.amount.grouped(),
                    step.after.grouped()
                )
            })
            .collect()
    }

    /// The rules over the room of the opening, judged for all openings that stand in it.
    pub(crate) fn room(&self) -> Vec<String> {
        let openings = &self.file.order.openings;
        let of_room: Vec<&Opening> = openings
            .iter()
            .filter(|opening| opening.room == openings[0].room)
            .collect();
        let settings: Vec<Setting<'_>> = of_room
            .iter()
            .map(|opening| setting_of(&self.file, &self.authorities, opening))
            .collect();
        let together = settings.iter().zip(&of_room);
        let units: Vec<Unit> = together
            .map(|(setting, opening)| fill(setting, &opening.units[0].picks))
            .collect();
        let together = settings.iter().zip(&units);
        let units: Vec<RoomUnit<'_>> = together
            .map(|(setting, unit)| RoomUnit { setting, unit })
            .collect();
        judge_room(&units)
            .iter()
            .map(|finding| self.of_room(finding))
            .collect()
    }

    fn of_room(&self, finding: &RoomFinding) -> String {
        let standing = match finding.standing {
            RoomStanding::Binds => "",
            RoomStanding::Warns => " (warns)",
            RoomStanding::SignOff => " (wants a sign-off)",
            RoomStanding::NotApplied => " (is not applied)",
        };
        let state = match finding.state {
            RoomState::Holds => "holds".to_owned(),
            RoomState::Broken => "is broken".to_owned(),
            RoomState::Undecided => {
                let units = finding.units.iter().flatten();
                let wants = units.flat_map(|unit| [unit.applies.wants(), unit.meets.wants()]);
                let wants: Wants = wants.flatten().flatten().cloned().collect();
                format!("waits for {}", self.wants(&wants))
            }
        };
        format!("{} {state}{standing}", finding.id)
    }

    /// A measure of the opening as it is shown, and who has deducted; nothing where it is not known.
    pub(crate) fn measure(&self, name: &str) -> String {
        let measures = &self.catalog().declarations().measures;
        let (at, _) = measures
            .iter()
            .find(|(_, measure)| measure.id.as_str() == name)
            .unwrap();
        let measured = self.opening().site.measures.at(at).as_ref();
        measured.map_or("not known".to_owned(), |measured| {
            let shown = self.catalog().show(Subject::Measure(at), &measured.value);
            match measured.deducted_by {
                Some(by) => format!("{shown}, {} has deducted", by.word()),
                None => shown,
            }
        })
    }

    /// The price of one unit.
    pub(crate) fn total(&self) -> String {
        match &self.judgement.total {
            Total::NotPriced => "not priced".to_owned(),
            Total::Known(money) => money.grouped(),
            Total::Unknown(wants) => format!("unknown: {}", self.wants(wants)),
            Total::NoPrice => "no price".to_owned(),
        }
    }

    /// The notices: carried for certain, or perhaps and for want of what.
    pub(crate) fn notices(&self) -> Vec<String> {
        let notices = self.judgement.notices.iter();
        notices
            .map(|notice| match &notice.wants {
                None => notice.id.to_string(),
                Some(wants) => format!("perhaps {}: {}", notice.id, self.wants(wants)),
            })
            .collect()
    }

    /// The attributes that somebody must choose now.
    pub(crate) fn to_choose(&self) -> Vec<String> {
        let open = self
            .judgement
            .open
            .iter()
            .filter(|open| open.is_to_choose(self.catalog()));
        open.map(|open| self.catalog().name_of(Subject::Attribute(open.attribute)))
            .collect()
    }

    /// Everything that is open, with what it waits for.
    pub(crate) fn open(&self) -> Vec<String> {
        let open = self.judgement.open.iter();
        open.map(|open| {
            let name = self.catalog().name_of(Subject::Attribute(open.attribute));
            format!("{name}: {}", self.wants(&open.wants))
        })
        .collect()
    }

    pub(crate) fn verdict(&self) -> &'static str {
        match self.judgement.verdict {
            Verdict::Holds => "holds",
            Verdict::Undecided => "undecided",
            Verdict::Broken => "broken",
        }
    }

    pub(crate) fn not_applied(&self) -> Vec<String> {
        self.judgement
            .authorities_not_applied
            .iter()
            .map(ToString::to_string)
            .collect()
    }

    fn rules(&self, name: impl Fn(&RuleFinding) -> Option<String>) -> Vec<String> {
        self.judgement.rules.iter().filter_map(name).collect()
    }

    /// The id, with the part, and for `has-a-price` the item.
    fn name(&self, finding: &RuleFinding) -> String {
        let declarations = self.catalog().declarations();
        let item = match finding.rule {
            RuleName::HasAPrice(item) => format!(" {}", declarations.items.at(item).id),
            _ => String::new(),
        };
        let part = finding.part.map_or(String::new(), |part| {
            format!("@{}", declarations.parts.at(part).id)
        });
        format!("{}{item}{part}", finding.id)
    }

    fn wants(&self, wants: &Wants) -> String {
        wants
            .iter()
            .map(|want| self.catalog().show_want(want))
            .collect::<Vec<_>>()
            .join(", ")
    }
}

fn setting<'a>(file: &'a OrderFile, authorities: &'a Authorities) -> Setting<'a> {
    setting_of(file, authorities, &file.order.openings[0])
}

fn setting_of<'a>(file: &'a OrderFile, authorities: &'a Authorities, opening: &'a Opening) -> Setting<'a> {
    let used = &file.catalogs[&opening.units[0].catalog];
    Setting {
        catalog: &used.catalog.catalog,
        book: Some(&used.book.book),
        policy: used.policy.as_ref().map(|policy| &policy.policy),
        site: &opening.site,
        waivers: &opening.units[0].waivers,
        authorities,
        date: file.order.date,
    }
}
