//! One code file of the examples in a library of its own, with a catalog that declares what the file asks for.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use astragal_catalog::finding::Findings;
use astragal_catalog::library_files::Library;
use astragal_catalog::load_catalog;
use astragal_catalog::source::Sources;
use astragal_model::{
    AttributeIndex, Authorities, Catalog, Choice, Date, FactIndex, Judgement, MeasureIndex, NoticeFinding,
    Outcome, RoomFinding, RoomUnit, Rule, Setting, Site, Subject, Unit, judge, judge_room,
};

use crate::case::Case;
use crate::said::Said;

/// The catalog that includes one code file.
pub(crate) struct CodeFile {
    catalog: Catalog,
    measures: BTreeMap<String, MeasureIndex>,
    facts: BTreeMap<String, FactIndex>,
    attributes: BTreeMap<String, AttributeIndex>,
    authorities: Authorities,
}

/// What the rules say of one case.
pub(crate) struct Answers<'a> {
    file: &'a CodeFile,
    judgement: Judgement,
}

/// The folder of the examples.
pub(crate) fn examples() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/library")
}

impl CodeFile {
    /// Loads the catalog of these declarations with the code file of this name.
    pub(crate) fn load(name: &str, declarations: &str) -> CodeFile {
        let folder = tempfile::tempdir().unwrap();
        let copy = |path: &str| {
            let to = folder.path().join(path);
            std::fs::create_dir_all(to.parent().unwrap()).unwrap();
            std::fs::copy(examples().join(path), to).unwrap();
        };
        copy("library.toml");
        copy("common/site.toml");
        copy(&format!("codes/{name}.toml"));
        for entry in std::fs::read_dir(examples().join("codes")).unwrap() {
            let sheet = entry.unwrap().file_name().into_string().unwrap();
            if sheet.starts_with(name) && sheet.ends_with(".csv") {
                copy(&format!("codes/{sheet}"));
            }
        }
        let head = format!(
            "format = 1\ninclude = [\"../codes/{name}.toml\"]\n[catalog]\nid = \"c\"\nlabel = \"C\"\n\
             length = {{ unit = \"in\" }}\n{declarations}"
        );
        std::fs::create_dir_all(folder.path().join("c")).unwrap();
        std::fs::write(folder.path().join("c/catalog.toml"), head).unwrap();
        Self::of(read(folder.path()))
    }

    fn of(catalog: Catalog) -> CodeFile {
        let of = catalog.declarations();
        let attributes = of.attributes.positions();
        CodeFile {
            measures: of
                .measures
                .iter()
                .map(|(at, measure)| (measure.id.to_string(), at))
                .collect(),
            facts: of
                .facts
                .iter()
                .map(|(at, fact)| (fact.id.to_string(), at))
                .collect(),
            attributes: attributes
                .map(|at| (catalog.name_of(Subject::Attribute(at)), at))
                .collect(),
            authorities: Authorities::default(),
            catalog,
        }
    }

    /// What the rules say of a case.
    pub(crate) fn judge(&self, case: &Case) -> Answers<'_> {
        let site = self.site(case);
        let judgement = judge(&self.setting(&site), &self.unit(case));
        Answers {
            file: self,
            judgement,
        }
    }

    /// What the rules over a room say of units in it.
    pub(crate) fn judge_room(&self, cases: &[Case]) -> Vec<RoomFinding> {
        let sites: Vec<Site> = cases.iter().map(|case| self.site(case)).collect();
        let settings: Vec<Setting<'_>> = sites.iter().map(|site| self.setting(site)).collect();
        let units: Vec<Unit> = cases.iter().map(|case| self.unit(case)).collect();
        let together = settings.iter().zip(&units);
        let together: Vec<RoomUnit<'_>> = together
            .map(|(setting, unit)| RoomUnit { setting, unit })
            .collect();
        judge_room(&together)
    }

    /// The rule of an id.
    pub(crate) fn rule(&self, id: &str) -> &Rule {
        let rules = &self.catalog.declarations().rules;
        rules.iter().find(|rule| rule.id.as_str() == id).unwrap()
    }

    pub(crate) fn catalog(&self) -> &Catalog {
        &self.catalog
    }

    fn setting<'a>(&'a self, site: &'a Site) -> Setting<'a> {
        Setting {
            catalog: &self.catalog,
            book: None,
            policy: None,
            site,
            waivers: &[],
            authorities: &self.authorities,
            date: Date::constant(2026, 11, 25),
        }
    }

    fn site(&self, case: &Case) -> Site {
        let of = self.catalog.declarations();
        let mut site = Site {
            measures: of.measures.values().map(|_| None).collect(),
            facts: of.facts.values().map(|_| None).collect(),
            ..Site::default()
        };
        for (name, value) in &case.values {
            if let Some(at) = self.measures.get(*name) {
                let measured = astragal_model::Measured {
                    value: value.clone(),
                    deducted_by: None,
                };
                site.measures.put(*at, Some(measured));
            } else {
                site.facts.put(self.facts[*name], Some(value.clone()));
            }
        }
        site
    }

    fn unit(&self, case: &Case) -> Unit {
        let of = self.catalog.declarations();
        let mut unit = Unit {
            choices: of.attributes.values().map(|_| Choice::Open).collect(),
        };
        for (name, choice) in &case.choices {
            unit.choices.put(self.attributes[*name], choice.clone());
        }
        unit
    }
}

fn read(folder: &Path) -> Catalog {
    let findings = Findings::new();
    let mut sources = Sources::new();
    let library = Library::find(folder, &findings).unwrap();
    let path = library.locate(&folder.join("c")).unwrap();
    let loaded = load_catalog(&library, &path, &mut sources, &findings);
    let found = findings.into_sorted(&sources);
    let found: Vec<String> = found
        .iter()
        .map(|finding| format!("{} {}", finding.code(), finding.message()))
        .collect();
    match loaded {
        Some(loaded) => loaded.catalog,
        None => panic!("{found:#?}"),
    }
}

impl Answers<'_> {
    /// Whether a rule holds.
    pub(crate) fn rule(&self, id: &str) -> Said {
        // A rule that is not there would hold for ever.
        let _ = self.file.rule(id);
        let mut found = self
            .judgement
            .rules
            .iter()
            .filter(|finding| finding.id.as_str() == id);
        Said::from(found.next().map(|finding| &finding.state))
    }

    /// What a figure comes to.
    pub(crate) fn figure(&self, id: &str) -> &Outcome {
        let figures = &self.file.catalog.declarations().figures;
        let mut found = self.judgement.figures.iter();
        let found = found.find(|finding| figures.at(finding.figure).id.as_str() == id);
        &found.unwrap().outcome
    }

    /// A notice that is carried, or may be.
    pub(crate) fn notice(&self, id: &str) -> Option<&NoticeFinding> {
        self.judgement
            .notices
            .iter()
            .find(|notice| notice.id.as_str() == id)
    }
}

/// What a catalog needs for the files of rules over openings, glass and falls.
pub(crate) const BUILDING: &str = r#"
[[part]]
id = "upper"
kind = "pane"
label = "upper pane"

[[part]]
id = "lower"
kind = "pane"
label = "lower pane"

[[attribute]]
id = "operation"
label = "Operation"
options = [
  { id = "casement" }, { id = "awning" }, { id = "fixed" }, { id = "single-hung" }, { id = "double-hung" },
  { id = "slider" },
]
standard = "ask"

[[attribute]]
id = "control_device"
label = "Control device"
options = [{ id = "none" }, { id = "fixed-stop" }, { id = "vent-latch" }, { id = "release-device" }]
standard = "ask"
applies_when = 'operation != "fixed"'

[[attribute]]
id = "safety"
label = "Safety glass"
options = [{ id = "annealed" }, { id = "heat-strengthened" }, { id = "tempered", families = ["safety"] }]
standard = "ask"
per = "pane"

[[measure]]
id = "clear_width"
label = "Clear width"

[[measure]]
id = "clear_height"
label = "Clear height"

[[measure]]
id = "pane_width"
label = "Pane width"

[[measure]]
id = "pane_height"
label = "Pane height"

[[figure]]
id = "opens"
label = "Opens"
formula = 'operation != "fixed"'

[[figure]]
id = "clear_area"
label = "Clear area"
formula = 'clear_width * clear_height'

[[figure]]
id = "pane_area"
label = "Pane area"
formula = 'pane_width * pane_height'
"#;

/// The editions of the building codes that the examples have, with their files loaded.
pub(crate) fn building_codes() -> Vec<(astragal_trade::building_code::Edition, CodeFile)> {
    use astragal_trade::building_code::Edition;
    let files = [
        (Edition::Irc2018, "irc-2018"),
        (Edition::Irc2021, "irc-2021"),
        (Edition::Irc2024, "irc-2024"),
        (Edition::Ibc2021, "ibc-2021"),
    ];
    let load = |(edition, name): (Edition, &str)| (edition, CodeFile::load(name, BUILDING));
    files.into_iter().map(load).collect()
}
