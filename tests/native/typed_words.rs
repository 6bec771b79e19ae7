//! What somebody types changes nothing that the app concludes: the same presses twice, once with the
//! app's own sentences in the fields of free text, once with harmless text of the same length.

use crate::support::*;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::event::Action;
use penlight::record::head::Head;

/// Sentences in which code once looked for something.
const PLANTS: [&str; 10] = [
    "soup: later than lunch",
    "bread he choked on",
    "decided by the nurse?",
    "gone on despite this",
    "coughed",
    "choked",
    "voice turned wet or changed",
    "the team knows",
    "first count: 2 dry swallows",
    "2 more in the record",
];

/// Everything that is concluded, and none of the words: verdict, what of it is noted, rules and levels
/// in their order, who may go on past what, whether it is closed and decided.
fn concluded(s: &Scene) -> Vec<String> {
    let decision = s.visit.decision().unwrap();
    let rules = |flags: &[penlight::clinical::findings::flag::Flag]| {
        let each = |f: &penlight::clinical::findings::flag::Flag| (f.rule().id, level(f.level()));
        flags.iter().map(each).collect::<Vec<_>>()
    };
    let noted = decision.noted();
    let head = Head::of(&s.visit);
    let mut all = vec![
        decision.verdict.id().to_owned(),
        format!("{:?}", noted.map(|n| (n.late, n.more, n.gravest.rule().id))),
        format!("{:?}", rules(&decision.reasons)),
        format!("{:?}", rules(&decision.missing)),
        format!("{:?}", rules(&decision.clear)),
        format!("{:?}", rules(&decision.also)),
        format!("{:?} {:?}", head.state, head.unclosed),
    ];
    for task in TaskId::ALL {
        let held = holds(*task, &s.visit.exam);
        let each = held.iter().map(|h| (h.rule.id, h.go_on));
        all.push(format!("{task:?} {:?}", each.collect::<Vec<_>>()));
    }
    all
}

fn level(level: Level) -> u8 {
    level as u8
}

/// Own trials with these signs, the same words in every field that takes some.
fn typed(words: &str, role: Role, signs: &[(Sign, i64)], action: Action) -> Vec<String> {
    let mut s = own_trials(role);
    s.given(TaskId::Own, 100_000, signs)
        .words("own-what", words)
        .words("own-strategy-words", words)
        .words("remark", words);
    s.given(TaskId::Own, 300_000, &[]).words("own-what", words);
    s.plan(action, words);
    concluded(&s)
}

#[test]
fn what_was_typed_moves_no_verdict_no_order_and_no_hold() {
    let late = 75_000;
    let sequences: [&[(Sign, i64)]; 5] = [
        &[],
        &[(Sign::ThroatClear, 3_000)],
        &[(Sign::Cough, 4_000)],
        &[(Sign::Cough, late), (Sign::ThroatClear, 3_000)],
        &[(Sign::Choke, 2_000)],
    ];
    for role in [Role::Slp, Role::Screener] {
        for signs in sequences {
            for plant in PLANTS {
                let harmless = "x".repeat(plant.chars().count());
                for action in [Action::KeepPlan, Action::AcknowledgedRisk] {
                    assert_eq!(
                        typed(plant, role, signs, action),
                        typed(&harmless, role, signs, action),
                        "{plant}: {signs:?}"
                    );
                }
            }
        }
    }
}

/// The sentence that once made a throat cleared 3 s after the swallow read as one that came later.
#[test]
fn a_soup_later_than_lunch_makes_no_sign_late() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::ThroatClear, 3_000)])
        .words("own-what", "soup: later than lunch");
    let decision = s.visit.decision().unwrap();
    assert!(decision.noted().is_none_or(|noted| !noted.late));
}
