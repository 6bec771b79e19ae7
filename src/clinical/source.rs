//! Where a figure or a rule comes from, and how far that can be trusted.

/// How a figure was come by. The app shows these in words beside every figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Seen in the publication itself, its abstract or its table.
    Published,
    /// Seen in a secondary report of the publication.
    Secondary,
    /// Plain arithmetic on published figures.
    Derived,
    /// A design choice without a published rule: the organisation may set it otherwise.
    LocalPolicy,
    /// A fact of the trade without a source.
    CommonPractice,
    /// From memory only. Background text; **never drives a flag**.
    FromMemory,
}

impl Mark {
    /// The mark in the words the app shows.
    pub const fn words(self) -> &'static str {
        match self {
            Mark::Published => "published",
            Mark::Secondary => "published, secondary copy",
            Mark::Derived => "derived from published figures",
            Mark::LocalPolicy => "local policy",
            Mark::CommonPractice => "common practice",
            Mark::FromMemory => "from memory, background only",
        }
    }
}

/// One publication, guideline or teaching page.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// Short key, used in code and in the source list.
    pub key: &'static str,
    /// Full citation as far as it is known.
    pub citation: &'static str,
    /// Who was studied, where it matters to the reader.
    pub population: &'static str,
    /// How its statements used here were seen.
    pub mark: Mark,
}

macro_rules! sources {
    ($($(#[$doc:meta])* $name:ident = $key:literal, $mark:ident, $population:literal, $citation:literal;)*) => {
        $(
            $(#[$doc])*
            #[doc = $citation]
            pub static $name: Source = Source {
                key: $key,
                citation: $citation,
                population: $population,
                mark: Mark::$mark,
            };
        )*
        /// Every source the app uses, in the order of its key list.
        pub static ALL: &[&Source] = &[$(&$name),*];
    };
}

sources! {
    OGU00A = "OGU00a", Published, "30 healthy young and 30 healthy older adults",
        "Oguchi K, Saitoh E, Mizuno M, Baba M, Okui M, Suzuki M. Jpn J Rehabil Med 2000;37:375-382.";
    OGU00B = "OGU00b", Published, "131 people, against videofluoroscopy: sensitivity 0.98, specificity 0.66 for aspiration",
        "Oguchi K and others, part 2. Jpn J Rehabil Med 2000;37:383 ff.";
    RSST25 = "RSST25", Published, "246 people, against a modified barium swallow study: sensitivity 35.5 %, specificity 92.4 %. It disagrees with OGU00b",
        "Dry-swallow test in aspiration prediction, n = 246, 2025 (authors and journal not seen).";
    BH24 = "BH24", Published, "280 healthy adults aged 20 to 90",
        "Ben-Hayoun DH, Asher I, Allon R, Gantz B, Boaron-Sharafi S, Pinhas S, Warman M, Shapira-Galitz Y. Dysphagia 2024;39(6):1193-1201 (volume from memory), doi 10.1007/s00455-024-10702-5.";
    REHK = "REHK", Secondary, "teaching pages on the dry-swallow test",
        "Japanese teaching pages on the dry-swallow and small-volume water tests (secondary).";
    STM = "STM", Secondary, "teaching pages; no swallow is the lowest result of the small-volume water test",
        "Japanese teaching pages on the dry-swallow and small-volume water tests, society manual wording (secondary).";
    TH4 = "TH4", Secondary, "residential care",
        "Study text on residential care using the 3-oz water swallow test (source paper not seen).";
    IDC = "IDC", Secondary, "population not seen",
        "Question-and-answer page on water swallow tests (secondary).";
    DEP92 = "DEP92", Secondary, "stroke rehabilitation, against videofluoroscopy: sensitivity 76 %, specificity 59 %",
        "DePippo KL, Holas MA, Reding MJ. Arch Neurol 1992;49:1259-1261 (volume and pages from memory); figures seen in a secondary report.";
    SL08 = "SL08", Published, "3,000 mixed referrals, against endoscopy: sensitivity 96.5 %, specificity 48.7 %",
        "Suiter DM, Leder SB. Dysphagia 2008;23:244-250.";
    ALS23 = "ALS23", Published, "212 people with ALS, against videofluoroscopy: sensitivity 55.2 %, specificity 71.7 %",
        "3 oz water swallow test in ALS (n = 212), PMC10294259 (authors and volume not seen).";
    SLK09 = "SLK09", Published, "56 children aged 2 to 18, against endoscopy",
        "Suiter DM, Leder SB, Karas DE. Otolaryngol Head Neck Surg 2009;140(2):187-190.";
    GRO23 = "GRO23", Published, "30 people: dysphonia at baseline, not change after the swallow, predicted airway invasion",
        "Dysphonia outperforms voice change as a clinical predictor of dysphagia. Am J Speech Lang Pathol 2023, doi 10.1044/2023_AJSLP-23-00018 (authors not seen).";
    WAI11 = "WAI11", Published, "40 people, thin liquid: perceived voice change, sensitivity 8-29 %",
        "Waito A, Bailey GL, Molfenter SM, Zoratto DC, Steele CM. Dysphagia 2011;26:125-134 (volume from memory), doi 10.1007/s00455-010-9282-4.";
    GRA = "GRA", Published, "bedside practice for nurses",
        "Grams LJ, Spremulli M. Bedside swallow screen do's and don'ts (nursing journal; volume not seen).";
    LOCAL = "LOCAL", CommonPractice, "hospital practice, several places",
        "Common hospital practice, no published source.";
    LED09 = "LED09", Published, "4,070 acute-care inpatients referred for dysphagia testing",
        "Leder SB, Suiter DM, Warner HL. Dysphagia 2009;24(3):290-295.";
    HFNC21 = "HFNC21", Published, "five adult studies of high-flow nasal oxygen, findings vary",
        "Effects of high-flow nasal cannula on adult swallowing, literature review. Perspectives ASHA SIG 13, 2021, doi 10.1044/2021_PERSP-20-00174.";
    NEWS2 = "NEWS2", Published, "adults aged 16 and over (the age line from memory); bands for general deterioration, not for swallowing",
        "Royal College of Physicians. National Early Warning Score (NEWS) 2. London: RCP; 2017. Two single-parameter bands are used, no score.";
    RIM19 = "RIM19", Published, "770 readings, 321 adults: a 60 s count is the reference",
        "Rimbi M, Dunsmuir D, Ansermino JM, Nakitende I, Namujwiga T, Kellett J. QJM 2019;112(7):513-517.";
    NZG = "NZ-G", Secondary, "population not seen",
        "Swallow screening page, citing Barber and others 2006 (secondary).";
    RCSLT21 = "RCSLT21", Published, "scope only was seen",
        "RCSLT. Eating and drinking with acknowledged risks. September 2021.";
    RNAO = "RNAO", Published, "population not seen",
        "Registered Nurses' Association of Ontario, dysphagia guidance.";
    NICE = "NICE", Published, "stroke admissions",
        "National Institute for Health and Care Excellence, guideline NG128, 2019 (specialist assessment preferably within 24 h, not later than 72 h).";
    DAN98 = "DAN98", Published, "55 people with acute stroke: 14 of 21 aspirators were silent",
        "Daniels SK, Brailey K, Priestly DH, Herrington LR, Weisberg LA, Foundas AL. Arch Phys Med Rehabil 1998;79(1):14-19.";
    OHO15 = "OHO15", Published, "systematic review: no bedside protocol is adequate in all groups",
        "O'Horo JC, Rogus-Pulia N, Garcia-Arguello L, Robbins J, Safdar N. J Hosp Med 2015 (volume from memory), PMC4607509.";
    BRI18 = "BRI18", Published, "systematic review of 10 studies: a fall in SpO2 is not supported as a sign of aspiration",
        "Britton D, Roeske A, Ennis SK, Benditt JO, Quinn C, Graville D. Dysphagia 2018;33:282-292.";
    NHSAA = "NHS-AA", Published, "adult dysphagia policy: signs to watch for",
        "NHS Ayrshire and Arran, adult dysphagia policy G125.";
    IDDSI = "IDDSI-DD", Published, "names of drink and food levels",
        "International Dysphagia Diet Standardisation Initiative. Complete IDDSI Framework, detailed definitions 2.0, July 2019, iddsi.org/framework, CC BY-SA 4.0 (creativecommons.org/licenses/by-sa/4.0). Level numbers and names are used unchanged; nothing is derived from them.";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_nothing_is_blank() {
        for (i, a) in ALL.iter().enumerate() {
            assert!(
                !a.citation.is_empty() && !a.population.is_empty(),
                "{}",
                a.key
            );
            assert!(!ALL[..i].iter().any(|b| b.key == a.key), "twice: {}", a.key);
        }
    }
}
