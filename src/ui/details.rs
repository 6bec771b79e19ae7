//! Person and place: the form, the same for a new visit and for filling in afterwards.

use leptos::ev;
use leptos::prelude::*;
use web_sys::HtmlInputElement;

use super::desk::Desk;
use super::heads::{ALL, newest};
use super::parts::{choices, folded, one_of, problem_line};
use crate::clinical::knowledge::person::{Age, AgeUnit, Label, Language, Setting, Sex};
use crate::draw::{Piece, all, el, said};
use crate::record::called::{Called, unlike};
use crate::record::event::Details;
use crate::record::id::VisitId;

/// What the form holds while it is being filled in.
#[derive(Clone, Copy)]
pub(super) struct Form {
    label: RwSignal<String>,
    /// The other visits on this phone, as they are called.
    others: Signal<Vec<Called>>,
    /// The label is still the suggested one.
    suggested: RwSignal<bool>,
    label_problem: RwSignal<String>,
    age: RwSignal<String>,
    unit: RwSignal<AgeUnit>,
    adult: RwSignal<bool>,
    age_problem: RwSignal<String>,
    sex: RwSignal<Option<Sex>>,
    setting: RwSignal<Option<Setting>>,
    language: RwSignal<Option<Language>>,
}

impl Form {
    /// A form with a suggested label and what is known already; `own` is the visit that it is of.
    pub(super) fn new(label: String, known: Option<&Details>, own: Option<VisitId>) -> Form {
        let heads = newest(Desk::get(), ALL);
        let others = Signal::derive(move || {
            let heads = heads.get().into_iter();
            let others = heads.filter(|h| !h.deleted && Some(&h.visit) != own.as_ref());
            others.map(|h| h.label).collect()
        });
        let age = known.and_then(|d| d.age);
        let (text, unit) = match age {
            Some(Age::Years(y)) => (y.to_string(), AgeUnit::Years),
            Some(Age::Months(m)) => (m.to_string(), AgeUnit::Months),
            Some(Age::Adult) | None => (String::new(), AgeUnit::Years),
        };
        Form {
            label: RwSignal::new(label),
            others,
            suggested: RwSignal::new(known.is_none()),
            label_problem: RwSignal::new(String::new()),
            age: RwSignal::new(text),
            unit: RwSignal::new(unit),
            adult: RwSignal::new(age == Some(Age::Adult)),
            age_problem: RwSignal::new(String::new()),
            sex: RwSignal::new(known.and_then(|d| d.sex)),
            setting: RwSignal::new(known.and_then(|d| d.setting)),
            language: RwSignal::new(known.and_then(|d| d.language)),
        }
    }

    /// Suggests another label, as long as nobody typed one.
    pub(super) fn suggest(self, label: String) {
        if self.suggested.get_untracked() {
            self.label.set(label);
        }
    }

    /// Reads the form; none where a field has a message.
    pub(super) fn read(self) -> Option<Details> {
        let label = match Label::parse(&self.label.get_untracked()) {
            Ok(label) => {
                self.label_problem.set(String::new());
                // Told apart from every other one: seen here, and at the head of the visit.
                let label = unlike(label, &self.others.get_untracked());
                self.label.set(label.as_str().to_owned());
                Some(label)
            }
            Err(error) => {
                self.label_problem.set(error.to_string());
                None
            }
        };
        let age = self.read_age();
        Some(Details {
            label: label?,
            age: age?,
            sex: self.sex.get_untracked(),
            setting: self.setting.get_untracked(),
            language: self.language.get_untracked(),
        })
    }

    /// The age: none for a message, `Some(None)` for not given.
    fn read_age(self) -> Option<Option<Age>> {
        let typed = self.age.get_untracked();
        if typed.trim().is_empty() {
            self.age_problem.set(String::new());
            return Some(self.adult.get_untracked().then_some(Age::Adult));
        }
        match Age::parse(&typed, self.unit.get_untracked()) {
            Ok(age) => {
                self.age_problem.set(String::new());
                Some(Some(age))
            }
            Err(error) => {
                self.age_problem.set(error.to_string());
                None
            }
        }
    }
}

/// The fields.
pub(super) fn details_fields(
    // The form.
    form: Form,
) -> Piece {
    let unit_of = move || {
        Some(match form.unit.get() {
            AgeUnit::Years => "years".to_owned(),
            AgeUnit::Months => "months".to_owned(),
        })
    };
    let pick_unit = Callback::new(move |id: Option<String>| {
        form.unit.set(match id.as_deref() {
            Some("months") => AgeUnit::Months,
            _ => AgeUnit::Years,
        });
        form.read_age();
    });
    let pick_adult = Callback::new(move |id: Option<String>| {
        form.adult.set(id.is_some());
        if id.is_some() {
            // The press is the newer answer; the number it replaces would contradict it.
            form.age.set(String::new());
            form.age_problem.set(String::new());
        }
    });
    let same = |words: &str| (words.to_owned(), crate::wording::words::capital(words));
    all![
        el("div.words")
            .with(
                el("label")
                    .attr("for", "label")
                    .with("Label of this visit. No names.")
            )
            .with(
                el("input")
                    .attr("id", "label")
                    .attr("type", "text")
                    .attr("autocomplete", "off")
                    .held(said(move || form.label.get()))
                    .attr("aria-describedby", "label-problem")
                    .attr(
                        "aria-invalid",
                        said(move || (!form.label_problem.get().is_empty()).to_string())
                    )
                    // A suggestion is written over, not added to. After the press: WebKit puts the
                    // caret where the finger left, whatever was selected when it came.
                    .on("click", move |event: ev::Event| {
                        if form.suggested.get_untracked() {
                            event_target::<HtmlInputElement>(&event).select();
                        }
                    })
                    .on("input", move |event: ev::Event| {
                        form.suggested.set(false);
                        form.label.set(event_target_value(&event));
                        if let Err(error) = Label::parse(&form.label.get_untracked()) {
                            form.label_problem.set(error.to_string());
                        } else {
                            form.label_problem.set(String::new());
                        }
                    })
            )
            .with(problem_line(form.label_problem).attr("id", "label-problem")),
        choices(
            "Age".into(),
            vec![("adult".to_owned(), "16 or over".to_owned())],
            Signal::derive(
                move || (form.adult.get() && form.age.get().is_empty()).then(|| "adult".to_owned())
            ),
            pick_adult
        ),
        el("div.age")
            .with(
                el("div.words")
                    .with(
                        el("label")
                            .attr("for", "age")
                            .with("or exactly, for norms by age")
                    )
                    .with(
                        el("input")
                            .attr("id", "age")
                            .attr("type", "text")
                            .attr("inputmode", "numeric")
                            .attr("autocomplete", "off")
                            .attr("maxlength", "5")
                            .held(said(move || form.age.get()))
                            .attr("aria-describedby", "age-problem")
                            .attr(
                                "aria-invalid",
                                said(move || (!form.age_problem.get().is_empty()).to_string())
                            )
                            .on("input", move |event: ev::Event| {
                                form.age.set(event_target_value(&event));
                                form.read_age();
                            })
                    )
            )
            .with(choices(
                "in".into(),
                vec![same("years"), same("months")],
                Signal::derive(unit_of),
                pick_unit
            )),
        problem_line(form.age_problem).attr("id", "age-problem"),
        folded("Sex, language, setting")
            .with(one_of(
                "Sex, where a norm is split by it",
                &[Sex::Female, Sex::Male],
                Sex::words,
                form.sex.into(),
                Callback::new(move |sex| form.sex.set(sex))
            ))
            .with(one_of(
                "Language of the speech tasks, for norms by language",
                Language::ALL,
                Language::words,
                form.language.into(),
                Callback::new(move |language| form.language.set(language))
            ))
            .with(one_of(
                "Setting",
                &Setting::ALL,
                Setting::words,
                form.setting.into(),
                Callback::new(move |setting| form.setting.set(setting))
            ))
    ]
}
