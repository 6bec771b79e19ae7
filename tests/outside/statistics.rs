//! The library's figures for the series and scores on standard input, as JSON on standard output.
//!
//! No test by itself: `statistics.py` beside it runs this and compares. A figure that can't be
//! taken is `null`.

use std::error::Error;
use std::io::{self, Write};
use std::num::NonZeroUsize;

use penlight::measure::normal::{Better, StandardScore};
use penlight::measure::series::Series;
use penlight::measure::time::Millis;
use penlight::measure::units::Percent;
use serde::{Deserialize, Serialize};

#[derive(Deserialize)]
struct Input {
    /// Marks in milliseconds, in any order.
    series: Vec<Vec<i64>>,
    /// Value, mean and standard deviation.
    scores: Vec<[f64; 3]>,
}

#[derive(Serialize)]
struct Output {
    series: Vec<SeriesFigures>,
    scores: Vec<ScoreFigures>,
}

/// Times in seconds.
#[derive(Serialize)]
struct SeriesFigures {
    count: usize,
    rate: Option<f64>,
    mean: Option<f64>,
    median: Option<f64>,
    sd: Option<f64>,
    cv: Option<f64>,
}

#[derive(Serialize)]
struct ScoreFigures {
    z: f64,
    percentile_less_is_better: f64,
    percentile_more_is_better: f64,
}

fn series(marks: Vec<i64>) -> SeriesFigures {
    let series = Series::new(marks.into_iter().map(Millis));
    // The median is that of breaths; how near the others must lie does not move it.
    let near = Percent::new(100.0).ok();
    let breathing = near.and_then(|near| series.breathing(NonZeroUsize::MIN, near).ok());
    SeriesFigures {
        count: series.count(),
        rate: series.rate_from_onsets().ok().map(f64::from),
        mean: series.mean_interval().ok().map(f64::from),
        median: breathing.map(|breathing| breathing.median.into()),
        sd: series.sd().ok().map(f64::from),
        cv: series.cv().ok().map(f64::from),
    }
}

fn score([value, mean, sd]: [f64; 3]) -> Result<ScoreFigures, Box<dyn Error>> {
    let z = StandardScore::new(value, mean, sd)?;
    Ok(ScoreFigures {
        z: z.get(),
        percentile_less_is_better: z.percentile_of_performance(Better::Less).get(),
        percentile_more_is_better: z.percentile_of_performance(Better::More).get(),
    })
}

fn main() -> Result<(), Box<dyn Error>> {
    let input: Input = serde_json::from_reader(io::stdin().lock())?;
    let output = Output {
        series: input.series.into_iter().map(series).collect(),
        scores: input
            .scores
            .into_iter()
            .map(score)
            .collect::<Result<_, _>>()?,
    };
    let mut out = io::stdout().lock();
    serde_json::to_writer(&mut out, &output)?;
    out.flush()?;
    Ok(())
}
