//! Reads the input of an example and runs the function it is about.

use penlight::clinical::decision::verdict::decide;
use penlight::clinical::findings::breathing::State;
use penlight::clinical::findings::fact::{OwnGiven, Seen, SeenSign, With};
use penlight::clinical::findings::flag::{Domain, Flag, Level};
use penlight::clinical::findings::looked::Looked;
use penlight::clinical::findings::oral::FrontTeeth;
use penlight::clinical::findings::oral::Gag;
use penlight::clinical::findings::oral::{Forehead, Sighting};
use penlight::clinical::knowledge::oral::nerve::{Nerve, Side};
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::policy::Wording;
use penlight::clinical::knowledge::rules;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::tasks::breath_taps::judge as breath_taps;
use penlight::clinical::tasks::breathing::child as breathing_child;
use penlight::clinical::tasks::by_mouth::signs;
use penlight::clinical::tasks::cracker::judge as cracker;
use penlight::clinical::tasks::flow::judge as flow;
use penlight::clinical::tasks::oral::{gag, mouth, tongue_range, weak_side};
use penlight::clinical::tasks::sips::three_ml::Run;
use penlight::clinical::tasks::sips::{judge as sips, three_ml};
use penlight::clinical::tasks::six_signs::judge as six_signs;
use penlight::clinical::tasks::timed_water::judge as timed_water;
use penlight::measure::series::Series;
use penlight::measure::time::Millis;
use penlight::measure::units::{LitresPerMinute, Millilitres, Millimetres, PerMinute};
use penlight::wording;
use penlight::wording::timed_water as words;

/// What a function says.
#[derive(Debug)]
pub(crate) enum Says {
    /// Flags, and what it asks for besides.
    Flags(Vec<Flag>, Option<&'static str>),
    /// An error, in its words.
    Error(String),
    /// A headline, and how many flags stand under "Also found".
    Headline(String, usize),
}

const CHILD: Age = Age::Years(8);

/// Runs "what: parts".
pub(crate) fn run(input: &str) -> Says {
    let (what, rest) = input.split_once(": ").unwrap();
    let age = Some(if what.ends_with("of a child") {
        CHILD
    } else {
        Age::Adult
    });
    let flags = |flags| Says::Flags(flags, None);
    match what.trim_end_matches(" of a child") {
        "3 mL" => flags(three_ml::judge(&three_ml_runs(rest), Wording::A)),
        "3 mL wording B" => flags(three_ml::judge(&three_ml_runs(rest), Wording::B)),
        "sips" => flags(sips::judge(&sips::Plan::default(), &sips_given(rest))),
        "90 mL after sips" => {
            let hold = sips::before_90(&sips::Plan::default(), &sips_given(rest));
            flags(hold.into_iter().collect())
        }
        "timed water" => timed_water(rest),
        "two cups" => {
            let ml = numbers(rest).map(|n| Millilitres::new(n).unwrap());
            let [now, before] = ml.collect::<Vec<_>>()[..] else {
                panic!("two volumes: {rest}");
            };
            flags(timed_water::other_volume(now, before).into_iter().collect())
        }
        "before timed water" => {
            let clear = looked(rest, "sips clear", "sips not clear");
            flags(timed_water::before(clear).into_iter().collect())
        }
        "cracker" => cracker_eaten(rest),
        "before cracker" => {
            let of = |name, otherwise| match rest.strip_prefix(name) {
                Some("") => Looked::Present,
                Some(" not tested") => Looked::NotTested,
                _ => otherwise,
            };
            let teeth = match rest {
                "no teeth" => Looked::Absent,
                _ => of("teeth", Looked::Present),
            };
            flags(cracker::before(&cracker::Before {
                teeth,
                drink_went_wrong: of("drink went wrong", Looked::Absent),
                allergy: of("allergy", Looked::Absent),
                diet_order: of("diet order", Looked::Absent),
            }))
        }
        "six signs" => flags(six(rest, age, false)),
        "six signs with gag" => flags(six(rest, age, true)),
        "flow" => {
            let tenths = (rest.parse::<f64>().unwrap() * 10.0).round() as i32;
            match flow::LeftOfTen::tenths(tenths) {
                Ok(left) => flags(flow::judge(left)),
                Err(error) => Says::Error(wording::flow::out_of_range(error).to_owned()),
            }
        }
        "breaths awake" => flags(child_breaths(rest, State::Awake)),
        "breaths asleep" => flags(child_breaths(rest, State::Asleep)),
        "taps of an adult" | "taps" => flags(taps(rest, age, false)),
        "taps of a counted adult" => flags(taps(rest, age, true)),
        "mouth opening" => {
            let width = Millimetres::new(numbers(rest).next().unwrap()).unwrap();
            let teeth = match rest.split(", ").nth(1) {
                Some("front teeth") => FrontTeeth::UpperAndLower,
                Some("no front teeth") => FrontTeeth::NotBoth,
                _ => FrontTeeth::NotLooked,
            };
            flags(mouth::opening(width, age, teeth))
        }
        "cough flow" => {
            let n = numbers(rest).next().unwrap();
            let flow = if rest.ends_with("L/s") {
                LitresPerMinute::new(n * 60.0).unwrap()
            } else {
                LitresPerMinute::new(n).unwrap()
            };
            flags(mouth::cough(flow, age))
        }
        "face" => flags(face(rest)),
        "tongue range" => flags(tongue_range::judge(looked(rest, "incomplete", "complete"))),
        "gag" => flags(vec![gag::judge(match rest {
            "present" => Gag::Present,
            "weak" => Gag::Weak,
            "absent" => Gag::Absent,
            "not tested" => Gag::NotTested,
            other => panic!("no gag: {other}"),
        })]),
        "decision" => headline(rest),
        other => match other.strip_prefix("sign in ") {
            Some(task) => flags(signs::judge(&with(task), &[sign(rest)])),
            None => panic!("not known: {input}"),
        },
    }
}

/// The first number of each part.
fn numbers(rest: &str) -> impl Iterator<Item = f64> + '_ {
    rest.split(", ")
        .filter_map(|part| part.split(' ').next()?.parse().ok())
}

fn looked(words: &str, there: &str, not_there: &str) -> Looked {
    match words {
        w if w == there => Looked::Present,
        w if w == not_there => Looked::Absent,
        w if w.ends_with("not tested") => Looked::NotTested,
        other => panic!("not known: {other}"),
    }
}

/// Runs of the 3 mL test, parted by "/"; what is not named was looked for and not there.
pub(crate) fn three_ml_runs(rest: &str) -> Vec<Run> {
    if rest == "nothing" {
        return Vec::new();
    }
    rest.split(" / ")
        .map(|run| {
            let mut seen = Run {
                swallowed: Looked::Absent,
                cough: Looked::Absent,
                wet_voice: Looked::Absent,
                breathing_change: Looked::Absent,
                residue: Looked::Absent,
                extra: None,
            };
            for part in run.split(", ") {
                let (name, looked) = match part.strip_suffix(" not tested") {
                    Some(name) => (name, Looked::NotTested),
                    None => (part, Looked::Present),
                };
                match name {
                    "swallow" => seen.swallowed = looked,
                    "no swallow" => seen.swallowed = Looked::Absent,
                    "cough" => seen.cough = looked,
                    "wet voice" => seen.wet_voice = looked,
                    "breathing change" => seen.breathing_change = looked,
                    "residue" => seen.residue = looked,
                    extra => {
                        seen.extra = Some(extra.strip_suffix(" extra").unwrap().parse().unwrap());
                    }
                }
            }
            seen
        })
        .collect()
}

/// "Cough" or "Cough at 20.0", by the words on the buttons.
fn sign(words: &str) -> SeenSign {
    let (name, seen) = match words.split_once(" at ") {
        Some((name, seconds)) => {
            let seconds: f64 = seconds.parse().unwrap();
            let after = Millis((seconds * 1000.0).round() as i64);
            (name, Seen::so_long_after(after))
        }
        None => (words, Seen::While),
    };
    let button = name.replace(" and ", ", ");
    let sign = Sign::ALL
        .into_iter()
        .find(|sign| sign.button() == button)
        .unwrap_or_else(|| panic!("no sign: {words}"));
    SeenSign { sign, seen }
}

fn with(words: &str) -> With {
    match words {
        "sips" => With::Sip(Millilitres::whole(5)),
        "timed water" => With::TimedCup,
        "cracker" => With::Cracker,
        "own trials" => With::Own {
            given: OwnGiven::default(),
            times: 1,
        },
        "meal" => With::Meal,
        other => panic!("no task: {other}"),
    }
}

/// Sips parted by "/": millilitres, and a sign or "not watched".
fn sips_given(rest: &str) -> Vec<sips::Sip> {
    rest.split(" / ")
        .map(|sip| {
            let (ml, words) = sip.split_once(' ').unwrap_or((sip, ""));
            sips::Sip {
                size: Millilitres::new(ml.parse().unwrap()).unwrap(),
                signs: match words {
                    "" | "not watched" => Vec::new(),
                    words => vec![sign(words)],
                },
                watched: words != "not watched",
            }
        })
        .collect()
}

fn timed_water(rest: &str) -> Says {
    let [offered, left, seconds, swallows] = numbers(rest).collect::<Vec<_>>()[..] else {
        panic!("four numbers: {rest}");
    };
    let cup = timed_water::Cup {
        offered: Millilitres::new(offered).unwrap(),
        left: Millilitres::new(left).unwrap(),
        time: Millis((seconds * 1000.0).round() as i64),
        swallows: Some(swallows as u32),
    };
    match timed_water::judge(&cup) {
        Ok(flags) => {
            let figures = timed_water::figures(&cup).ok();
            Says::Flags(flags, figures.and_then(|figures| words::ask(&figures)))
        }
        Err(error) => Says::Error(words::no_figures(error).to_owned()),
    }
}

fn cracker_eaten(rest: &str) -> Says {
    let [bites, chews, swallows, seconds] = numbers(rest).collect::<Vec<_>>()[..] else {
        panic!("four numbers: {rest}");
    };
    let eaten = cracker::Cracker {
        bites: bites as u32,
        chews: chews as u32,
        swallows: swallows as u32,
        time: Millis((seconds * 1000.0).round() as i64),
    };
    match cracker::judge(&eaten) {
        Ok(flags) => Says::Flags(flags, None),
        Err(error) => Says::Error(wording::cracker::no_figures(error).to_owned()),
    }
}

/// "1 present, 1 not tested, 4 absent": the signs in their order.
fn six(rest: &str, age: Option<Age>, gag_counts: bool) -> Vec<Flag> {
    let mut all = Vec::new();
    for part in rest.split(", ") {
        let (n, words) = part.split_once(' ').unwrap();
        let looked = looked(words, "present", "absent");
        all.extend(std::iter::repeat_n(looked, n.parse().unwrap()));
    }
    let [
        voice,
        speech,
        gag,
        cough_on_request,
        cough_after,
        voice_after,
    ] = all[..]
    else {
        panic!("six signs: {rest}");
    };
    let signs = six_signs::SixSigns {
        voice,
        speech,
        gag,
        cough_on_request,
        cough_after,
        voice_after,
    };
    six_signs::judge(&signs, age, six_signs::Setting { gag_counts })
}

/// "57, 6 months".
fn child_breaths(rest: &str, state: State) -> Vec<Flag> {
    let (rate, age) = rest.split_once(", ").unwrap();
    let (n, unit) = age.split_once(' ').unwrap();
    let n = n.parse().unwrap();
    let age = match unit {
        "months" => Age::Months(n),
        "years" => Age::Years(n),
        other => panic!("no age: {other}"),
    };
    let rate = PerMinute::new(rate.parse().unwrap()).unwrap();
    breathing_child::judge(rate, age, Some(state))
}

/// Seconds, parted by spaces.
fn taps(rest: &str, age: Option<Age>, counted: bool) -> Vec<Flag> {
    let taps = Series::new(rest.split(' ').map(|seconds| {
        let seconds: f64 = seconds.parse().unwrap();
        Millis((seconds * 1000.0).round() as i64)
    }));
    breath_taps::judge(&taps, age, counted, breath_taps::Setting::default())
}

fn face(rest: &str) -> Vec<Flag> {
    let mut sightings = Vec::new();
    let mut forehead = Forehead::default();
    for part in rest.split(", ") {
        let (words, side) = part.rsplit_once(' ').unwrap();
        let side = match side {
            "left" => Side::Left,
            "right" => Side::Right,
            other => panic!("no side: {other}"),
        };
        let mut on_forehead = |looked| match side {
            Side::Left => forehead.left = looked,
            Side::Right => forehead.right = looked,
        };
        match words {
            "tongue to" => sightings.push(Sighting::TonguePointsTo(side)),
            "uvula to" => sightings.push(Sighting::UvulaPulledTo(side)),
            "jaw to" => sightings.push(Sighting::JawOpensTo(side)),
            "smile to" => sightings.push(Sighting::SmilePulledTo(side)),
            "face weak on" => sightings.push(Sighting::FoundWeak(Nerve::Seventh, side)),
            "forehead moves" => on_forehead(Looked::Present),
            "forehead still" => on_forehead(Looked::Absent),
            other => panic!("not known: {other}"),
        }
    }
    weak_side::judge(&sightings, forehead)
}

/// Flags by domain and level: "eating pass, mouth refer".
fn headline(rest: &str) -> Says {
    let flags = rest.split(", ").map(|part| {
        let (domain, level) = part.split_once(' ').unwrap();
        let domain = match domain {
            "eating" => Domain::EatingDrinking,
            "mouth" => Domain::Mouth,
            "breathing" => Domain::Breathing,
            "speech" => Domain::SpeechVoice,
            other => panic!("no domain: {other}"),
        };
        let level = match level {
            "note" => Level::Note,
            "pass" => Level::Pass,
            "incomplete" => Level::Incomplete,
            "refer" => Level::Refer,
            "stop" => Level::Stop,
            other => panic!("no level: {other}"),
        };
        rules::DECISION_HEADLINE.flag(
            level,
            domain,
            penlight::clinical::findings::fact::VisitFact::AgeNotGiven,
        )
    });
    let decision = decide(flags.collect(), None);
    Says::Headline(
        penlight::wording::verdict::headline(decision.verdict).to_owned(),
        decision.also.len(),
    )
}
