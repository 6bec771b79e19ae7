//! A line drawing on which a place and its side are picked, and on which exceptions are shown.
//!
//! Drawn for Penlight. It leads to the rows above it and holds nothing of its own: whoever does not
//! see it misses nothing.

use leptos::prelude::*;

use super::desk::Desk;
use super::oral_rows::{Rows, answer_of};
use crate::browser::page;
use crate::clinical::findings::oral::{Answer, Sides};
use crate::clinical::knowledge::oral::nerve::Side;
use crate::clinical::knowledge::oral::{Item, Region, Sided};
use crate::draw::{Drawn, Piece, all, el, live, said};
use crate::wording::found;
use crate::wording::oral_answers;
use crate::wording::oral_items;

/// Face from the front.
const FACE: &str = "M160 8C96 8 72 64 74 120C76 190 118 250 160 250C202 250 244 190 246 120C248 64 224 8 160 8\
    M100 68Q118 56 138 66M182 66Q202 56 220 68\
    M100 92Q118 80 136 92Q118 102 100 92M220 92Q202 80 184 92Q202 102 220 92\
    M160 88L150 138Q160 146 170 138M140 140Q124 154 118 176M180 140Q196 154 202 176\
    M126 192Q144 182 160 188Q176 182 194 192Q160 212 126 192M126 192Q160 197 194 192\
    M146 230Q160 237 174 230M74 102Q56 98 60 126Q62 148 78 150M246 102Q264 98 260 126Q258 148 242 150";

/// Open mouth: lips, upper teeth, arches, uvula, tongue.
const MOUTH: &str = "M36 128C36 40 116 12 160 26C204 12 284 40 284 128C284 220 222 250 160 250C98 250 36 220 36 128\
    M58 128C58 64 112 38 160 42C208 38 262 64 262 128C262 196 212 230 160 230C108 230 58 196 58 128\
    M84 76Q160 40 236 76M94 124Q120 58 152 84M226 124Q200 58 168 84\
    M152 84Q148 126 160 130Q172 126 168 84\
    M84 186Q96 150 160 160Q224 150 236 186Q224 224 160 226Q96 224 84 186M160 166L160 220";

/// Tongue put out over the lower lip.
const TONGUE: &str = "M44 78C80 18 136 18 160 34C184 18 240 18 276 78M44 78Q160 52 276 78\
    M96 72C84 136 98 246 160 248C222 246 236 136 224 72M160 92L160 226\
    M44 78Q54 146 98 166M276 78Q266 146 222 166";

fn drawing(region: Region) -> Option<&'static str> {
    match region {
        Region::Face | Region::Lips | Region::Jaw | Region::Feeling => Some(FACE),
        Region::Mouth | Region::Palate => Some(MOUTH),
        Region::Tongue => Some(TONGUE),
        Region::Voice | Region::Gag => None,
    }
}

/// The picture of a region, where it has one.
pub(super) fn oral_picture(
    // The region.
    region: Region,
    // What the page shares.
    rows: Rows,
) -> Piece {
    drawing(region)
        .map(|lines| {
            let spots = region
                .items()
                .filter(|item| item.spot.is_some())
                .flat_map(|item| [Side::Right, Side::Left].map(|side| spot(item, side, rows)));
            all![
                el("div.sides")
                    .with(el("span").with("Patient's right"))
                    .with(el("span").with("Patient's left")),
                el("div.oral-picture")
                    .attr("role", "group")
                    .attr("aria-label", "Places, each leading to its line above")
                    .with(
                        el("svg")
                            .attr("viewBox", "0 0 320 256")
                            .attr("aria-hidden", "true")
                            .with(el("path").attr("d", lines))
                    )
                    .with(spots.collect::<Piece>())
            ]
        })
        .piece()
}

/// What is found at a place, in words: empty where nothing is. What has no side stands at both
/// places; what has one that nobody noted too, with a question.
fn found_at(desk: Desk, item: &'static Item, side: Side) -> String {
    let answer = answer_of(desk, item);
    if let Answer::Touched { left, right } = &answer {
        let touches = if side == Side::Left { left } else { right };
        let whole = touches.is_whole();
        return found::touches(*touches)
            .filter(|_| !whole)
            .unwrap_or_default();
    }
    let words: Vec<String> = answer
        .found()
        .iter()
        .filter(|f| f.side().is_none_or(|s| s.has(side)))
        .map(|f| {
            let open = f.exception().side != Sided::No && f.side().is_none();
            let asks = if open { ", side?" } else { "" };
            format!("{}{asks}", oral_items::exception(item, f.exception()))
        })
        .collect();
    words.join(", ")
}

fn spot(item: &'static Item, side: Side, rows: Rows) -> Piece {
    let desk = Desk::get();
    let (x, y) = item.spot.map_or((0, 0), |spot| (spot.0, spot.1));
    let x = if side == Side::Left { 320 - x } else { x };
    let pick = move |_| {
        rows.picked.set(Some((item.id, side)));
        rows.opened.update(|o| {
            if !o.contains(&item.id) {
                o.push(item.id);
            }
        });
        page::focus_on(item.id);
    };
    let name = move || {
        let found = found_at(desk, item, side);
        let colon = if found.is_empty() { "" } else { ": " };
        format!(
            "{}, {}{colon}{found}",
            oral_items::name(item),
            oral_answers::sides(Sides::from(side))
        )
    };
    el("button.spot")
        .style("left", format!("{}%", percent(x * 100, 320)))
        .style("top", format!("{}%", percent(y * 100, 256)))
        .attr("aria-label", said(name))
        .press(pick)
        .with(live(move || {
            let found = found_at(desk, item, side);
            if found.is_empty() {
                el("i.ring").attr("aria-hidden", "true").piece()
            } else {
                el("span.seen")
                    .with(el("span").attr("aria-hidden", "true").with("\u{25B2} "))
                    .with(found)
                    .piece()
            }
        }))
        .piece()
}

/// A share in whole percent.
fn percent(part: i32, of: i32) -> i32 {
    (part + of / 2) / of
}
