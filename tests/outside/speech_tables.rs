//! The tables themselves against arithmetic: figures worked out by hand from the published means
//! and SDs, then compared with what the rows in `clinical/norms` give. A digit mistyped in a row
//! shows here.
//!
//! Keys are those of `clinical/sources.csv`.

#![allow(clippy::unwrap_used)]

use penlight::clinical::knowledge::norms::{Method, ROWS, Row, Task, Unit};
use penlight::clinical::knowledge::person::Sex;
use penlight::clinical::tasks::breath::judge::COUNTS_A_SECOND;
use penlight::clinical::tasks::compared::BELOW_USUAL;
use penlight::wording::norms;

/// Equal to as many decimals as printed, halves either way.
#[track_caller]
fn prints(value: f64, printed: &str, what: &str) {
    let places = printed.split_once('.').map_or(0, |(_, d)| d.len());
    let half = 0.5 * 10_f64.powi(-(places as i32)) + 1e-9;
    let figure: f64 = printed.parse().unwrap();
    assert!(
        (value - figure).abs() <= half,
        "{what}: {value} is not {printed}"
    );
}

#[track_caller]
fn only<'a>(found: impl Iterator<Item = &'a Row>) -> &'a Row {
    let found: Vec<_> = found.collect();
    assert_eq!(found.len(), 1, "{found:#?}");
    found[0]
}

fn child(task: Task, years: u32) -> &'static Row {
    only(ROWS.iter().filter(|row| {
        row.task == task && row.unit == Unit::Seconds && row.ages == (years * 12, years * 12 + 11)
    }))
}

/// FLE72/UW, ages 6 to 13: syllables a second = repetitions x syllables / seconds.
#[test]
fn rates_of_the_children() {
    let table = [
        (Task::Pa, 20.0, "4.17 4.17 4.76 5.00 5.41 5.56 5.88 6.06"),
        (Task::Ta, 20.0, "4.08 4.08 4.55 4.88 5.26 5.56 5.71 6.06"),
        (Task::Ka, 20.0, "3.64 3.77 4.17 4.35 4.65 5.00 5.13 5.41"),
        (
            Task::PaTaKa,
            30.0,
            "2.91 3.00 3.61 3.90 4.23 4.62 4.69 5.26",
        ),
    ];
    for (task, syllables, printed) in table {
        for (years, printed) in (6..=13).zip(printed.split(' ')) {
            let row = child(task, years);
            let strict = match task {
                Task::PaTaKa => Method::Time10,
                _ => Method::Time20,
            };
            assert_eq!(row.method, strict);
            let rate = syllables / row.mean.unwrap();
            prints(rate, printed, &format!("{} at {years}", norms::task(task)));
        }
    }
}

/// FLE72/UW: slow is above the mean, at M + 1 SD and M + 2 SD.
#[test]
fn slow_lines_of_the_children() {
    let table = [
        (
            Task::Pa,
            "5.8/6.8 5.8/6.8 4.9/5.6 4.7/5.4 4.3/4.9 4.2/4.8 4.0/4.6 3.9/4.5",
        ),
        (
            Task::Ta,
            "5.9/6.9 5.9/6.9 5.1/5.8 4.8/5.5 4.4/5.0 4.2/4.8 4.1/4.7 3.9/4.5",
        ),
        (
            Task::Ka,
            "6.5/7.5 6.3/7.3 5.5/6.2 5.3/6.0 4.9/5.5 4.6/5.2 4.5/5.1 4.3/4.9",
        ),
        (
            Task::PaTaKa,
            "13.1/15.9 12.8/15.6 10.3/12.3 9.7/11.7 8.6/10.1 8.0/9.5 7.9/9.4 7.2/8.7",
        ),
    ];
    for (task, printed) in table {
        for (years, lines) in (6..=13).zip(printed.split(' ')) {
            let row = child(task, years);
            let (mean, sd) = (row.mean.unwrap(), row.sd.unwrap());
            let (watch, slow) = lines.split_once('/').unwrap();
            let what = format!("{} at {years}", norms::task(task));
            prints(mean + sd, watch, &what);
            prints(mean + 2.0 * sd, slow, &what);
        }
    }
}

/// FLE72: 384 children, 24 boys and 24 girls of each of eight ages.
#[test]
fn children_of_each_age() {
    let rows: Vec<_> = ROWS.iter().filter(|row| row.source.key == "UW").collect();
    assert_eq!(rows.len(), 4 * 8);
    for row in rows {
        assert_eq!(row.n, Some(384 / 8));
    }
}

/// Pa-ta-ka of adults: M - 1.645 SD.
#[test]
fn fifth_percentiles_of_the_adults() {
    for (source, language, printed) in [
        ("IBD14", "en", "4.88"),
        ("IBD14", "he", "5.08"),
        ("BDI17", "he", "3.16"),
        ("JOR22", "ar-JO", "5.19"),
        ("CHU21", "zh-MY", "3.27"),
        ("TAM25", "ta", "3.76"),
    ] {
        let row = only(ROWS.iter().filter(|row| {
            row.task == Task::PaTaKa && row.source.key == source && row.language == language
        }));
        let fifth = row.mean.unwrap() - BELOW_USUAL * row.sd.unwrap();
        prints(fifth, printed, &format!("{source} {language}"));
    }
    // IBD14: the authors' line of 5.4 is M - 1 SD.
    let english = only(ROWS.iter().filter(|row| row.language == "en"));
    prints(english.mean.unwrap() - english.sd.unwrap(), "5.4", "IBD14");
}

/// ka is the slowest, pa and ta about equal (ITO09, TAM25).
#[test]
fn ka_is_the_slowest() {
    for source in ["ITO09", "TAM25"] {
        let mean = |task| {
            only(
                ROWS.iter()
                    .filter(|row| row.task == task && row.source.key == source),
            )
            .mean
            .unwrap()
        };
        assert!(mean(Task::Ka) < mean(Task::Ta) && mean(Task::Ta) <= mean(Task::Pa));
    }
}

/// Semitones worked out from the hertz printed beside them.
#[test]
fn semitones() {
    let between = |low: f64, high: f64| 12.0 * (high / low).log2();
    let row = |key: &str| only(ROWS.iter().filter(|row| row.source.key == key));
    // AND21: mean lowest and highest pitch, and the mean range printed beside them.
    prints(between(143.6, 1063.5), "34.7", "AND21");
    assert_eq!(row("AND21").mean, Some(34.7));
    // SCH10: quarters.
    let children = row("SCH10");
    prints(between(220.0, 784.0), "22", "SCH10");
    prints(between(196.0, 1047.0), "29", "SCH10");
    assert_eq!((children.p25, children.p75), (Some(22.0), Some(29.0)));
    // Derived lines: AND21 M - 1.645 SD and M - 2 SD, TEL08 M - 1.645 SD.
    let line = |row: &Row, sds: f64| row.mean.unwrap() - sds * row.sd.unwrap();
    prints(line(row("AND21"), BELOW_USUAL), "28.3", "AND21");
    prints(line(row("AND21"), 2.0), "26.9", "AND21");
    prints(line(row("TEL08"), BELOW_USUAL), "14.6", "TEL08");
}

/// Counting on one breath at two a second: count / 2 = seconds.
#[test]
fn seconds_of_a_count() {
    for (count, printed) in [(25, "12.5"), (27, "13.5"), (41, "20.5")] {
        prints(
            f64::from(count) / f64::from(COUNTS_A_SECOND),
            printed,
            "count",
        );
    }
}

/// The longest "ah" of MAS11: from SE to SD, over three trials a person. No SD was published, so
/// the rows have none; their caveat says "about 9 to 10 s".
#[test]
fn spread_of_the_longest_ah() {
    for (decade, people, se, printed) in [
        (60, 15, 1.56, "10.5"),
        (70, 26, 1.11, "9.8"),
        (80, 28, 0.97, "8.9"),
    ] {
        prints(se * f64::from(3 * people).sqrt(), printed, "MAS11");
        let row = only(ROWS.iter().filter(|row| {
            row.source.key == "MAS11" && row.sex.is_none() && row.ages.0 == decade * 12
        }));
        let people = u32::try_from(people).unwrap();
        assert_eq!((row.n, row.sd), (Some(people), None));
    }
    for (se, printed) in [(1.09, "9.05"), (1.12, "9.30"), (1.27, "10.55")] {
        prints(se * 69_f64.sqrt(), printed, "MAS11, by trial");
    }
}

/// Brazilian children: the means by sex lie around the mean of both, within the rounding (TAV12).
#[test]
fn boys_and_girls_around_both() {
    let ah = |years: u32, male: Option<bool>| {
        only(ROWS.iter().filter(|row| {
            row.task == Task::Ah
                && row.language == "pt-BR"
                && row.ages.0 == years * 12
                && row.sex.map(|sex| sex.words() == "male") == male
        }))
        .mean
        .unwrap()
    };
    // The rows of both sexes are of the congress summary where that has an SD.
    for (years, both_in_tav12) in [(4, 6.09), (7, 7.94), (10, 8.98)] {
        let (boys, girls) = (ah(years, Some(true)), ah(years, Some(false)));
        let (least, most) = (boys.min(girls), boys.max(girls));
        assert!(least <= both_in_tav12 && both_in_tav12 <= most);
    }
    assert_eq!((ah(4, None), ah(7, None), ah(10, None)), (6.12, 7.98, 8.98));
}

/// The longest sounds have no arithmetic to be checked by, so they are typed a second time from
/// the publications: mean and SD for both, then means for women or girls and men or boys.
#[test]
#[rustfmt::skip] // One row a line.
fn longest_sounds_typed_twice() {
    type Figures = (Option<f64>, Option<f64>, Option<f64>, Option<f64>);
    let table: [(&str, Task, u32, Figures); 14] = [
        ("MAS11", Task::Ah, 60, (Some(22.27), None, Some(20.96), Some(23.23))),
        ("MAS11", Task::Ah, 70, (Some(22.97), None, None, None)),
        ("MAS11", Task::Ah, 80, (Some(21.14), None, None, None)),
        ("TAV12", Task::Ah, 4, (None, None, Some(6.21), Some(5.97))),
        ("TAV12", Task::Ah, 7, (None, None, Some(7.79), Some(8.07))),
        ("TAV12", Task::Ah, 10, (Some(8.98), None, Some(8.92), Some(9.05))),
        ("TAV-C", Task::Ah, 4, (Some(6.12), Some(1.89), None, None)),
        ("TAV-C", Task::Ah, 7, (Some(7.98), Some(1.98), None, None)),
        ("TAV-C", Task::S, 4, (Some(5.84), Some(1.91), None, None)),
        ("TAV-C", Task::S, 7, (Some(7.61), Some(1.92), None, None)),
        ("TAV-C", Task::S, 10, (Some(9.16), Some(2.10), None, None)),
        ("TAV-C", Task::Z, 10, (Some(9.26), Some(2.19), None, None)),
        ("TAV-C", Task::Z, 4, (Some(6.09), Some(1.95), None, None)),
        ("TAV-C", Task::Z, 7, (Some(8.02), Some(1.95), None, None)),
    ];
    let mut seen = 0;
    for (source, task, from, (mean, sd, women, men)) in table {
        let of = |sex: Option<Sex>| {
            let mut rows = ROWS.iter().filter(|row| {
                row.source.key == source
                    && row.task == task
                    && row.ages.0 == from * 12
                    && row.sex == sex
            });
            let row = rows.next();
            assert!(rows.next().is_none());
            row
        };
        let means = [None, Some(Sex::Female), Some(Sex::Male)].map(of);
        seen += means.iter().flatten().count();
        let [both, female, male] = means.map(|row| row.and_then(|row| row.mean));
        assert_eq!((both, female, male), (mean, women, men), "{source} {from}");
        assert_eq!(of(None).and_then(|row| row.sd), sd, "{source} {from}");
    }
    let rows = ROWS
        .iter()
        .filter(|row| [Task::Ah, Task::S, Task::Z].contains(&row.task));
    assert_eq!(seen, rows.count(), "a row was not checked");
}
