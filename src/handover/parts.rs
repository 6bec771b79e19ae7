//! A text as a list of parts, each with its long form, its short form and when it gives way, and
//! one loop that fits them into the room there is.
//!
//! **Invariant:** what may never be cut has no rank in the order below.

use crate::clinical::knowledge::sign::Sign;

/// When a part gives way to make room: the lower ranks first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Rank(u16);

/// The order in which room is made; within a stage the last of a list goes first.
#[derive(Clone, Copy)]
enum Stage {
    /// What holds at the gate.
    AsExpected,
    /// Findings of face, mouth and throat from the sixth on; what was not tested is counted.
    LaterFindings,
    /// When to screen again.
    ScreenAgain,
    /// Such findings from the fourth on.
    MoreFindings,
    /// Who went on past something, and why: that it was gone past stays.
    Reasons,
    /// What else is known of before, but for the first.
    MoreBackground,
    /// What decides nothing, from the fourth on.
    MoreAssessment,
    /// Findings of face, mouth and throat but for the first.
    Findings,
    /// What decides nothing.
    Assessment,
    /// What else is known of before.
    Background,
    /// What was gone past, readings, what is missing: only where nothing else is left to cut.
    Kept,
}

/// More parts than any list has.
const MOST_OF_A_LIST: u16 = 64;

fn rank(stage: Stage, index: usize) -> Rank {
    let index = u16::try_from(index).unwrap_or(u16::MAX);
    let from_last = MOST_OF_A_LIST - 1 - index.min(MOST_OF_A_LIST - 1);
    Rank(stage as u16 * MOST_OF_A_LIST + from_last)
}

/// How much a part is needed: with its place in its list this says when it gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Need {
    /// Told whatever else there is.
    Always,
    /// Among the last to go.
    Kept,
    /// The same, but the first of its list stays, and the next two as long as anything of theirs.
    First,
    /// Among the last to be cut to its short form, which stays.
    Short,
    /// Cut to its short form early, and then among the last to go.
    GonePast,
    /// What decides nothing.
    Assessment,
    /// What else is known of before.
    Background,
    /// What is as expected: the first to go, and not counted.
    AsExpected,
    /// A finding of face, mouth and throat; the first stays.
    Finding,
    /// What is said as long as this finding is, by its place; not counted.
    With(usize),
    /// What was not tested of them: counted where there is no room for its names.
    NotTested,
    /// When to screen again: not counted.
    ScreenAgain,
}

/// Needs that count their place in a list together.
fn shares_places(one: Need, other: Need) -> bool {
    let kept = |need| {
        matches!(
            need,
            Need::Kept | Need::First | Need::Short | Need::GonePast
        )
    };
    one == other || kept(one) && kept(other)
}

impl Need {
    /// When the short form takes the long one's place, and when nothing is left of it.
    fn gives_way(self, index: usize) -> (Option<Rank>, Option<Rank>) {
        let last = rank(Stage::Kept, index);
        match self {
            Need::Always => (None, None),
            Need::Kept => (None, Some(last)),
            Need::First => match index {
                0 => (None, None),
                1 | 2 => (None, Some(rank(Stage::Kept, 0))),
                _ => (None, Some(last)),
            },
            Need::Short => (Some(last), None),
            Need::GonePast => (Some(rank(Stage::Reasons, 0)), Some(last)),
            Need::Assessment if index >= 3 => (None, Some(rank(Stage::MoreAssessment, index))),
            Need::Assessment => (None, Some(rank(Stage::Assessment, index))),
            Need::Background if index >= 1 => (None, Some(rank(Stage::MoreBackground, index))),
            Need::Background => (None, Some(rank(Stage::Background, index))),
            Need::AsExpected => (None, Some(rank(Stage::AsExpected, index))),
            Need::Finding => (None, Need::finding(index)),
            Need::With(finding) => (None, Need::finding(finding)),
            // Names give way to their number before any finding does.
            Need::NotTested => (
                Some(rank(Stage::LaterFindings, usize::MAX)),
                Need::finding(index),
            ),
            Need::ScreenAgain => (None, Some(rank(Stage::ScreenAgain, index))),
        }
    }

    fn finding(index: usize) -> Option<Rank> {
        match index {
            0 => None,
            1 | 2 => Some(rank(Stage::Findings, index)),
            3 | 4 => Some(rank(Stage::MoreFindings, index)),
            _ => Some(rank(Stage::LaterFindings, index)),
        }
    }

    /// Whether it is said how many of these there is no room for.
    fn is_counted(self) -> bool {
        !matches!(self, Need::AsExpected | Need::ScreenAgain | Need::With(_))
    }
}

/// A part of a text.
#[derive(Clone, Debug)]
pub(super) struct Part {
    long: String,
    short: Option<String>,
    need: Need,
    tells: Option<Tells>,
}

/// What a short form tells: said once, however often it was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Tells {
    /// The sign.
    pub(super) sign: Sign,
    /// Whether it was seen with the 90 mL.
    pub(super) of_90: bool,
}

impl Part {
    /// A part with one form.
    pub(super) fn new(need: Need, words: impl Into<String>) -> Part {
        Part {
            long: words.into(),
            short: None,
            need,
            tells: None,
        }
    }

    /// A part with a short form.
    pub(super) fn or(need: Need, long: impl Into<String>, short: impl Into<String>) -> Part {
        Part {
            long: long.into(),
            short: Some(short.into()),
            need,
            tells: None,
        }
    }

    /// With what its short form tells.
    pub(super) fn telling(mut self, tells: Tells) -> Part {
        self.tells = Some(tells);
        self
    }

    /// Its long form.
    pub(super) fn words(&self) -> &str {
        &self.long
    }
}

/// How the parts of a list are joined.
#[derive(Clone, Copy)]
pub(super) enum Joined {
    /// One sentence: "a; b; 2 more in the record."
    List,
    /// As they are, with a space between them.
    Words,
    /// As they are, one after the other.
    Run,
}

/// Parts under one heading.
pub(super) struct List {
    heading: &'static str,
    joined: Joined,
    parts: Vec<Part>,
}

impl List {
    /// Parts under a heading.
    pub(super) fn new(heading: &'static str, joined: Joined, parts: Vec<Part>) -> List {
        List {
            heading,
            joined,
            parts,
        }
    }

    /// Its parts, each with when its short form stands for it and when it goes.
    fn ranked(&self) -> impl Iterator<Item = (&Part, Option<Rank>, Option<Rank>)> {
        self.parts.iter().enumerate().map(|(n, part)| {
            let before = self.parts[..n].iter();
            let place = before.filter(|p| shares_places(p.need, part.need)).count();
            let (shorten, drop) = part.need.gives_way(place);
            (part, shorten, drop)
        })
    }

    /// As it reads once everything up to a rank gave way; none where nothing is left.
    fn told(&self, cut: Option<Rank>) -> Option<String> {
        let is_cut = |rank: Option<Rank>| rank.is_some() && rank <= cut;
        let mut told: Vec<&str> = Vec::new();
        let mut signs: Vec<Tells> = Vec::new();
        let mut more = 0;
        for (part, shorten, drop) in self.ranked() {
            let words = match &part.short {
                _ if is_cut(drop) => None,
                Some(short) if is_cut(shorten) => Some(short.as_str()),
                _ => Some(part.long.as_str()),
            };
            match words {
                Some(_) if is_cut(shorten) && part.tells.is_some_and(|t| signs.contains(&t)) => {
                    more += 1;
                }
                Some(words) => {
                    told.push(words);
                    signs.extend(part.tells);
                }
                None => more += usize::from(part.need.is_counted()),
            }
        }
        let more = (more > 0).then(|| format!("{more} more in the record"));
        told.extend(more.as_deref());
        if told.is_empty() {
            return None;
        }
        let words = match self.joined {
            Joined::Words => told.join(" "),
            Joined::Run => told.concat(),
            // Some parts are whole sentences elsewhere; here the list has the only full stop.
            Joined::List => {
                let told: Vec<&str> = told.iter().map(|w| w.trim_end_matches('.')).collect();
                ended(&told.join("; "))
            }
        };
        Some(format!("{}{words}", self.heading))
    }
}

/// Words as the end of a sentence; a question has its own.
fn ended(words: &str) -> String {
    let end = if words.ends_with('?') { "" } else { "." };
    format!("{words}{end}")
}

/// Lists in one line, as far as anything is left of them.
pub(super) struct Line {
    heading: &'static str,
    lists: Vec<List>,
}

impl Line {
    /// A line of one list.
    pub(super) fn of(list: List) -> Line {
        Line::under("", vec![list])
    }

    /// A line of several lists under a heading.
    pub(super) fn under(heading: &'static str, lists: Vec<List>) -> Line {
        Line { heading, lists }
    }

    /// A line that is told as it is.
    pub(super) fn always(words: impl Into<String>) -> Line {
        let part = Part::new(Need::Always, words);
        Line::of(List::new("", Joined::Run, vec![part]))
    }

    fn told(&self, cut: Option<Rank>) -> Option<String> {
        let lists = self.lists.iter().filter_map(|list| list.told(cut));
        let lists: Vec<String> = lists.collect();
        (!lists.is_empty()).then(|| format!("{}{}", self.heading, lists.join(" ")))
    }
}

fn text(lines: &[Line], cut: Option<Rank>) -> String {
    let lines: Vec<String> = lines.iter().filter_map(|line| line.told(cut)).collect();
    lines.join("\n")
}

/// The text of fewer than `most` characters, or the shortest there is; room is made in the order of
/// the ranks.
pub(super) fn fitted(lines: &[Line], most: usize) -> String {
    let lists = lines.iter().flat_map(|line| &line.lists);
    let mut ranks: Vec<Rank> = lists
        .flat_map(List::ranked)
        .flat_map(|(_, shorten, drop)| shorten.into_iter().chain(drop))
        .collect();
    ranks.sort_unstable();
    ranks.dedup();
    let cuts = std::iter::once(None).chain(ranks.into_iter().map(Some));
    let mut whole = String::new();
    for cut in cuts {
        whole = text(lines, cut);
        if whole.chars().count() < most {
            break;
        }
    }
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(need: Need, words: &[&str]) -> Line {
        let parts = words.iter().map(|w| Part::new(need, *w)).collect();
        Line::of(List::new("", Joined::List, parts))
    }

    #[test]
    fn room_is_made_in_the_order_of_need_and_what_goes_is_counted() {
        let lines = [
            line(Need::Always, &["coughed"]),
            line(Need::Kept, &["breathing 18 a minute", "SpO2 96 %"]),
            line(Need::Background, &["diet order", "feeding tube"]),
            line(Need::AsExpected, &["awake"]),
        ];
        let whole =
            "coughed.\nbreathing 18 a minute; SpO2 96 %.\ndiet order; feeding tube.\nawake.";
        assert_eq!(fitted(&lines, 1_000), whole);
        let without = "coughed.\nbreathing 18 a minute; SpO2 96 %.\ndiet order; feeding tube.";
        assert_eq!(fitted(&lines, whole.len()), without);
        let counted = "coughed.\nbreathing 18 a minute; SpO2 96 %.\n2 more in the record.";
        assert_eq!(fitted(&lines, without.len()), counted);
        let last = "coughed.\n2 more in the record.\n2 more in the record.";
        assert_eq!(fitted(&lines, 0), last);
    }

    #[test]
    fn what_is_never_cut_stays_at_any_length() {
        let long = "choked, help called after 20 s, back to baseline after 1 min 5 s";
        assert_eq!(
            fitted(&[line(Need::Always, &[long])], 10),
            format!("{long}.")
        );
        let kept = fitted(&[line(Need::First, &[long, "coughed"])], 10);
        assert_eq!(kept, format!("{long}; 1 more in the record."));
    }

    #[test]
    fn the_same_short_form_is_said_once() {
        let cough = Tells {
            sign: Sign::Cough,
            of_90: true,
        };
        let short = |long: &str| Part::or(Need::Short, long, "coughed (90 mL)").telling(cough);
        let parts = vec![
            short("coughed 3 seconds after the last swallow of the 90 mL"),
            short("coughed 9 seconds after the last swallow of the 90 mL"),
        ];
        let lines = [Line::of(List::new("", Joined::List, parts))];
        assert_eq!(fitted(&lines, 10), "coughed (90 mL); 1 more in the record.");
    }
}
