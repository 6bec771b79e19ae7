//! What was found in face, mouth and throat, in words: exceptions with side and grade, touches.

use crate::clinical::findings::oral::{Found, Sides, Touches};
use crate::clinical::knowledge::oral::Sided;
use crate::clinical::knowledge::oral::nerve::Side;
use crate::clinical::tasks::oral::points::Line;
use crate::wording::oral_answers as answers;
use crate::wording::oral_items as items;

/// What is meant by what findings point to, and what is not.
pub const MEANT: &str = "The weak side, and the nerve a finding belongs to. No place of a lesion \
    and no diagnosis is meant. Findings that disagree stand side by side.";

/// "points to the left", "droops on the right, mild".
pub fn words(found: &Found) -> String {
    let (item, exception) = (found.item(), found.exception());
    let plain = items::exception(item, exception);
    let one = found.side().and_then(Sides::one);
    let mut words = match (exception.side, found.side(), one) {
        (Sided::To, _, Some(side)) => {
            let towards = items::towards(item, exception);
            format!("{towards} {}", items::side(side))
        }
        (_, Some(side), _) => format!("{plain}{}", answers::on_sides(side)),
        (Sided::No, None, _) => plain.to_owned(),
        (_, None, _) => format!("{plain} (side not noted)"),
    };
    if let Some(severity) = found.severity() {
        words.push_str(", ");
        words.push_str(answers::severity(severity));
    }
    words
}

/// With its item in front: "Tongue put out: points to the left".
pub fn named(found: &Found) -> String {
    format!("{}: {}", items::name(found.item()), words(found))
}

/// Several of them.
pub fn all(found: &[Found]) -> String {
    found.iter().map(named).collect::<Vec<_>>().join("; ")
}

/// "2 of 3 felt, 1 of them less"; none where nothing was touched.
pub fn touches(touches: Touches) -> Option<String> {
    if touches.all() == 0 {
        return None;
    }
    let mut words = format!("{} of {} felt", touches.hits(), touches.all());
    if touches.less > 0 {
        words.push_str(&format!(", {} of them less", touches.less));
    }
    Some(words)
}

/// What belongs to a nerve.
pub fn point(line: &Line) -> String {
    match line {
        Line::Found(found, None) => named(found),
        Line::Found(found, Some(weak)) => {
            format!("{}. Weak side: {}", named(found), items::side(*weak))
        }
        Line::Touched(item, side, felt) => touched(items::name(item), *side, *felt),
    }
}

fn touched(name: &str, side: Side, felt: Touches) -> String {
    let felt = touches(felt).unwrap_or_default();
    format!("{name}, {}: {felt}", items::side(side))
}
