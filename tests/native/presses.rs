//! What one press costs must not grow with those before it: what is kept so that nobody looks
//! through all marks, works out every head, or reads an event just written again, is the same as if
//! somebody had.

use crate::support::*;
use std::sync::Arc;

use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::marks::{Counted, Mark, MarkKind, Marks};
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::measure::time::Millis;
use penlight::record::envelope::{Envelope, SCHEMA, body};
use penlight::record::event::{Details, Event, Versions};
use penlight::record::head::Head;
use penlight::record::id::VisitId;
use penlight::record::queue::Queue;
use penlight::record::visit::Visit;
use proptest::prelude::*;
use proptest::sample::{Index, select};

use crate::support::any::config;

fn every_kind() -> Vec<MarkKind> {
    let mut kinds = vec![
        MarkKind::Start,
        MarkKind::Tap,
        MarkKind::End,
        MarkKind::WindowOver,
        MarkKind::WatchOver,
        MarkKind::Stopped,
    ];
    kinds.extend(Sign::ALL.map(MarkKind::Sign));
    kinds.extend(counted().map(MarkKind::Count));
    kinds
}

fn counted() -> [Counted; 5] {
    [
        Counted::Chew,
        Counted::Swallow,
        Counted::Breath,
        Counted::Other,
        Counted::Note,
    ]
}

// --- The marks of a trial ---------------------------------------------------------------------------

#[derive(Clone, Debug)]
enum Change {
    Push(MarkKind, i64),
    Remove(Index),
    Drop(MarkKind),
    Move(Index, i64),
    Clear,
    Renew,
}

fn any_change() -> impl Strategy<Value = Change> {
    let kind = || select(every_kind());
    prop_oneof![
        12 => (kind(), 0_i64..100).prop_map(|(kind, ms)| Change::Push(kind, ms)),
        2 => any::<Index>().prop_map(Change::Remove),
        1 => kind().prop_map(Change::Drop),
        1 => (any::<Index>(), 0_i64..100).prop_map(|(which, ms)| Change::Move(which, ms)),
        1 => Just(Change::Clear),
        1 => Just(Change::Renew),
    ]
}

fn change(marks: &mut Marks, change: Change) {
    match change {
        Change::Push(kind, ms) => marks.push(Mark { at: at(ms), kind }),
        Change::Drop(kind) => marks.retain(|m| m.kind != kind),
        Change::Clear => marks.clear(),
        Change::Renew => *marks = marks.to_vec().into(),
        Change::Remove(which) if !marks.is_empty() => {
            let place = which.index(marks.len());
            marks.remove(place);
        }
        Change::Move(which, ms) if !marks.is_empty() => {
            let place = which.index(marks.len());
            marks[place].at = at(ms);
        }
        Change::Remove(_) | Change::Move(..) => {}
    }
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn what_is_kept_of_the_marks_is_what_a_look_through_them_finds(
        changes in prop::collection::vec(any_change(), 0..40),
    ) {
        let mut marks = Marks::default();
        for one in changes {
            change(&mut marks, one);
            for kind in every_kind() {
                let mut of_kind = marks.iter().filter(|m| m.kind == kind);
                prop_assert_eq!(marks.count_of(kind), of_kind.clone().count());
                prop_assert_eq!(marks.first_of(kind), of_kind.next().map(|m| m.at));
            }
            let pressed = marks.iter().filter(|m| m.kind.pressed()).count();
            prop_assert_eq!(marks.pressed(), pressed);
        }
    }
}

// --- The head of a visit ----------------------------------------------------------------------------

/// Something that happened before, told by a number.
fn before(s: &mut Scene, what: usize, n: usize) {
    let from = 200_000 + i64::try_from(n).unwrap() * 100_000;
    s.now = from;
    match what {
        0 => s.gate(&[("new-weakness", "new")]),
        1 => s.gate(&[("chest", "chest")]),
        2 => s.breaths(31),
        3 => s.dry(&[2_000]),
        4 => s.water(&[(Sign::Cough, 2_000)]),
        5 => s.water(&[]),
        6 => {
            s.open(TaskId::Meal);
            s.mark(from, MarkKind::Start);
            s.mark(from + 1_000, MarkKind::Sign(Sign::Cough))
        }
        7 => s.say(Event::Choking(at(from))),
        8 => s.say(Event::Closed("seen".to_owned())),
        9 => s.say(Event::EndedEarly(EndedEarly::BrokenOff)),
        10 => {
            let verdict = s.visit.decision().unwrap().verdict.id().to_owned();
            s.say(Event::Decided {
                verdict,
                reasons: Vec::new(),
                versions: Versions {
                    app: "0".to_owned(),
                    rules: "1".to_owned(),
                },
                policy: String::new(),
            })
        }
        11 => {
            let child = Details {
                age: Some(Age::Years(4)),
                ..s.visit.details.clone().unwrap()
            };
            s.say(Event::Details(child))
        }
        12 => s.on(ScreenId::FullVisit),
        _ => s.on(ScreenId::OwnTrials),
    };
}

/// A count, or now and then what ends it.
fn any_press() -> impl Strategy<Value = MarkKind> {
    prop_oneof![
        20 => Just(MarkKind::Tap),
        8 => select(counted().to_vec()).prop_map(MarkKind::Count),
        1 => select(every_kind()),
    ]
}

proptest! {
    #![proptest_config(config(500))]

    #[test]
    fn a_head_that_is_carried_on_is_the_head_worked_out_anew(
        already in any::<bool>(),
        befores in prop::collection::vec(0_usize..14, 0..5),
        task in select(TaskId::ALL.to_vec()),
        presses in prop::collection::vec((any_press(), select(vec![40_i64, 900, 20_000, 1_200_000])), 1..30),
        decided in prop::option::of(0_usize..30),
    ) {
        let mut s = if already { ready(Role::Slp) } else { adult(Role::Screener) };
        for (n, what) in befores.into_iter().enumerate() {
            before(&mut s, what, n);
        }
        let mut now = 1_000_000;
        s.now = now;
        s.open(task);
        s.mark(now, MarkKind::Start);
        let mut head = Head::of(&s.visit);
        for (n, (kind, gap)) in presses.into_iter().enumerate() {
            if decided == Some(n) {
                let trial = s.trial;
                before(&mut s, 10, 9);
                s.trial = trial;
            }
            now += gap;
            s.now = now;
            s.mark(now, kind);
            head = Head::after(Some(&head), &s.visit);
            prop_assert_eq!(&head, &Head::of(&s.visit));
        }
    }
}

/// Three dry swallows clear before their window is over: the head says so with the third.
#[test]
fn the_third_dry_swallow_is_news_at_once() {
    let mut s = ready(Role::Slp);
    before(&mut s, 5, 0);
    s.now = 1_000_000;
    s.open(TaskId::DrySwallow);
    s.mark(1_000_000, MarkKind::Start);
    let trial = s.trial;
    before(&mut s, 10, 9);
    s.trial = trial;
    let mut head = Head::of(&s.visit);
    for n in 1..=5 {
        s.now = 1_000_000 + n * 900;
        s.mark(s.now, MarkKind::Tap);
        head = Head::after(Some(&head), &s.visit);
        assert_eq!(head, Head::of(&s.visit), "tap {n}");
    }
}

// --- The queue --------------------------------------------------------------------------------------

/// Records an event as a press does: the visit takes it as it is, and its envelope is queued.
fn press(visit: &mut Arc<Visit>, queue: &mut Queue, ms: i64, event: Event) {
    let envelope = Envelope {
        device: "here".to_owned(),
        visit: visit.id.clone(),
        seq: visit.next,
        schema: SCHEMA,
        key: String::new(),
        at: at(ms),
        body: body(&event).unwrap(),
    };
    Arc::make_mut(visit).take_new(&envelope, event);
    queue.push(vec![envelope], Arc::clone(visit));
}

fn visit(id: &str) -> Arc<Visit> {
    Arc::new(Visit::new(VisitId::new(id).unwrap()))
}

fn opens(task: TaskId) -> Event {
    Event::TrialOpened {
        trial: 0,
        task,
        length: None,
    }
}

fn counts(ms: i64, kind: MarkKind) -> Event {
    Event::Mark {
        trial: 0,
        at: at(ms),
        kind,
    }
}

fn seqs(batch: &[Envelope]) -> Vec<u32> {
    batch.iter().map(|e| e.seq).collect()
}

#[test]
fn what_comes_while_a_batch_is_written_waits_for_the_next_with_its_own_head() {
    let mut one = visit("0123456789abcdef");
    let mut queue = Queue::default();
    press(&mut one, &mut queue, 0, opens(TaskId::Meal));
    press(&mut one, &mut queue, 10, counts(10, MarkKind::Start));
    let (batch, head) = queue.batch().unwrap();
    assert_eq!((seqs(&batch), &head), (vec![0, 1], &Head::of(&one)));
    press(&mut one, &mut queue, 900, counts(900, MarkKind::Tap));
    queue.stored(&batch);
    let (batch, head) = queue.batch().unwrap();
    assert_eq!((seqs(&batch), &head), (vec![2], &Head::of(&one)));
    assert_eq!((head.touched, head.events), (at(900).wall, 3));
    queue.stored(&batch);
    assert!(queue.batch().is_none());
}

#[test]
fn what_was_refused_is_given_again_with_what_came_since() {
    let mut one = visit("0123456789abcdef");
    let mut queue = Queue::default();
    press(&mut one, &mut queue, 0, opens(TaskId::Meal));
    let refused = queue.batch().unwrap();
    assert_eq!(queue.batch().unwrap(), refused);
    press(&mut one, &mut queue, 10, counts(10, MarkKind::Start));
    let (batch, head) = queue.batch().unwrap();
    assert_eq!((seqs(&batch), head), (vec![0, 1], Head::of(&one)));
}

/// A count is attached to a visit first, and told so only then.
#[test]
fn visits_are_written_in_the_order_they_were_recorded_in() {
    let (mut one, mut two) = (visit("0123456789abcdef"), visit("fedcba9876543210"));
    let mut queue = Queue::default();
    press(&mut one, &mut queue, 0, opens(TaskId::FreeCount));
    let before = Head::of(&one);
    press(&mut two, &mut queue, 10, opens(TaskId::Meal));
    let attached = Event::AttachedTo(two.id.clone());
    press(&mut one, &mut queue, 20, attached);
    let mut written = Vec::new();
    while let Some((batch, head)) = queue.batch() {
        queue.stored(&batch);
        written.push((seqs(&batch), head));
    }
    let expected = [
        (vec![0], before),
        (vec![0], Head::of(&two)),
        (vec![1], Head::of(&one)),
    ];
    assert_eq!(written, expected);
}

#[test]
fn what_waits_of_a_deleted_visit_goes_and_nothing_else() {
    let (mut one, mut two) = (visit("0123456789abcdef"), visit("fedcba9876543210"));
    let mut queue = Queue::default();
    press(&mut one, &mut queue, 0, opens(TaskId::FreeCount));
    let (batch, _) = queue.batch().unwrap();
    press(&mut two, &mut queue, 10, opens(TaskId::Meal));
    queue.forget(&one.id);
    // What was being written of it meanwhile takes nothing of the other out.
    queue.stored(&batch);
    let waits: Vec<&VisitId> = queue.events().map(|e| &e.visit).collect();
    assert_eq!(waits, [&two.id]);
}

// --- The event that was just written ----------------------------------------------------------------

#[test]
fn a_gap_is_told_whichever_way_an_event_is_taken() {
    let mut read = Visit::new(VisitId::new("0123456789abcdef").unwrap());
    let mut new = read.clone();
    let event = counts(0, MarkKind::Sign(Sign::Cough));
    let envelope = Envelope {
        device: "here".to_owned(),
        visit: read.id.clone(),
        seq: 4,
        schema: SCHEMA,
        key: String::new(),
        at: at(0),
        body: body(&event).unwrap(),
    };
    read.take(&envelope);
    new.take_new(&envelope, event);
    assert_eq!(format!("{new:?}"), format!("{read:?}"));
    assert_eq!((new.next, new.exam.unread), (5, 4));
    assert_eq!(new.touched, Millis(at(0).wall.0));
}
