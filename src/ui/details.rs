//! Person and place: the form, the same for a new visit and for filling in afterwards.

use leptos::prelude::*;

use super::live::{live, said};
use super::parts::Choices;
use crate::clinical::person::{Age, AgeUnit, Label, Language, Setting, Sex};
use crate::record::event::Details;

/// What the form holds while it is being filled in.
#[derive(Clone, Copy)]
pub(super) struct Form {
    label: RwSignal<String>,
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
    /// A form with a suggested label and what is known already.
    pub(super) fn new(label: String, known: Option<&Details>) -> Form {
        let age = known.and_then(|d| d.age);
        let (text, unit) = match age {
            Some(Age::Years(y)) => (y.to_string(), AgeUnit::Years),
            Some(Age::Months(m)) => (m.to_string(), AgeUnit::Months),
            Some(Age::Adult) | None => (String::new(), AgeUnit::Years),
        };
        Form {
            label: RwSignal::new(label),
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

    /// Reads the form; none where a field has a message.
    pub(super) fn read(self) -> Option<Details> {
        let label = match Label::parse(&self.label.get_untracked()) {
            Ok(label) => {
                self.label_problem.set(String::new());
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
#[component]
pub(super) fn DetailsFields(
    /// The form.
    form: Form,
) -> impl IntoView {
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
    let sexes = [Sex::Female, Sex::Male];
    let pick_sex = Callback::new(move |id: Option<String>| {
        form.sex
            .set(sexes.into_iter().find(|s| Some(s.words()) == id.as_deref()));
    });
    let pick_setting = Callback::new(move |id: Option<String>| {
        form.setting.set(
            Setting::ALL
                .into_iter()
                .find(|s| Some(s.words()) == id.as_deref()),
        );
    });
    let pick_language = Callback::new(move |id: Option<String>| {
        form.language.set(
            Language::ALL
                .iter()
                .copied()
                .find(|l| Some(l.words()) == id.as_deref()),
        );
    });
    let same = |words: &str| (words.to_owned(), crate::clinical::words::capital(words));
    view! {
        <div class="words">
            <label for="label">"Label of this visit. No names."</label>
            <input
                id="label"
                type="text"
                autocomplete="off"
                prop:value=said(move || form.label.get())
                aria-describedby="label-problem"
                aria-invalid=said(move || (!form.label_problem.get().is_empty()).to_string())
                on:input=move |event| {
                    form.label.set(event_target_value(&event));
                    if let Err(error) = Label::parse(&form.label.get_untracked()) {
                        form.label_problem.set(error.to_string());
                    } else {
                        form.label_problem.set(String::new());
                    }
                }
            />
            <p class="problem" id="label-problem" role="alert">{live(move || form.label_problem.get())}</p>
        </div>
        <Choices
            label="Age"
            options=vec![("adult".to_owned(), "16 or over".to_owned())]
            chosen=Signal::derive(move || (form.adult.get() && form.age.get().is_empty()).then(|| "adult".to_owned()))
            pick=pick_adult
        />
        <div class="age">
            <div class="words">
                <label for="age">"or exactly, for norms by age"</label>
                <input
                    id="age"
                    type="text"
                    inputmode="numeric"
                    autocomplete="off"
                    maxlength="5"
                    prop:value=said(move || form.age.get())
                    aria-describedby="age-problem"
                    aria-invalid=said(move || (!form.age_problem.get().is_empty()).to_string())
                    on:input=move |event| {
                        form.age.set(event_target_value(&event));
                        form.read_age();
                    }
                />
            </div>
            <Choices
                label="in"
                options=vec![same("years"), same("months")]
                chosen=Signal::derive(unit_of)
                pick=pick_unit
            />
        </div>
        <p class="problem" id="age-problem" role="alert">{live(move || form.age_problem.get())}</p>
        <details class="more">
            <summary>"Sex, language, setting"</summary>
            <Choices
                label="Sex, where a norm is split by it"
                options=sexes.iter().map(|s| same(s.words())).collect()
                chosen=Signal::derive(move || form.sex.get().map(|s| s.words().to_owned()))
                pick=pick_sex
            />
            <Choices
                label="Language of the speech tasks, for norms by language"
                options=Language::ALL.iter().map(|l| same(l.words())).collect()
                chosen=Signal::derive(move || form.language.get().map(|l| l.words().to_owned()))
                pick=pick_language
            />
            <Choices
                label="Setting"
                options=Setting::ALL.iter().map(|s| same(s.words())).collect()
                chosen=Signal::derive(move || form.setting.get().map(|s| s.words().to_owned()))
                pick=pick_setting
            />
        </details>
    }
}
