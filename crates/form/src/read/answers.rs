//! What was answered about the pool besides figures?

use crate::read::reader::Reader;
use plan::Ruling;
use plan::{
    Algae, Clarity, Grade, Grains, Kind, Paper, Papers, Place, Ready, Rulings, Running, Treated, Weather,
    Wiring, Word, YesNo,
};

impl Reader<'_> {
    /// What was answered about the pool, and said of it.
    pub fn ready(&mut self) -> Ready {
        let trace = |x: f64| Some(x);
        let ruling = |r: &mut Self, who, role, day| {
            let named = r.words(who) & r.words(role);
            Ruling { named, day: r.day(day) }
        };
        for (name, codes, state) in [
            ("pool.kind", &["public"][..], "kind.public"),
            ("surface.word", &["have", "refused"], "word.given"),
        ] {
            if codes.contains(&self.form.text(name)) {
                self.answer.say(state);
            }
        }
        let word_day = self.day("surface.word-day").valid();
        let mut paper = |name| self.choice(name, Paper::ALL, Paper::code);
        let papers = Papers {
            liner: paper("papers.liner"),
            heater: paper("papers.heater"),
            cover: paper("papers.cover"),
            stone: paper("papers.stone"),
            rails: paper("papers.rails"),
        };
        Ready {
            finish: self.day("surface.day"),
            word: self.choice("surface.word", Word::ALL, Word::code),
            word_named: self.words("surface.who"),
            word_day,
            treated: self.choice("past.treated", Treated::ALL, Treated::code),
            papers,
            full: self.choice("ready.full", YesNo::ALL, YesNo::code),
            running: self.choice("ready.running", Running::ALL, Running::code),
            clear: self.choice("ready.clear", Clarity::ALL, Clarity::code),
            algae: self.choice("ready.algae", Algae::ALL, Algae::code),
            swum: self.choice("ready.people", YesNo::ALL, YesNo::code),
            weather: self.choice("ready.weather", Weather::ALL, Weather::code),
            wired: self.choice("ready.wired", Wiring::ALL, Wiring::code),
            grade: self.choice("bag.grade", Grade::ALL, Grade::code),
            kind: self.choice("pool.kind", Kind::ALL, Kind::code),
            operator: self.choice("pool.operator", YesNo::ALL, YesNo::code),
            place: self.choice("pool.place", Place::ALL, Place::code),
            grains: self.choice("grains", Grains::ALL, Grains::code),
            moved: self.choice("salt.since", YesNo::ALL, YesNo::code),
            combined: self.optional("water.cc", trace),
            copper: self.optional("water.cu", trace),
            iron: self.optional("water.fe", trace),
            rulings: Rulings {
                finish_age: ruling(
                    self,
                    "over.finish-age.who",
                    "over.finish-age.role",
                    "over.finish-age.day",
                ),
                clearance: ruling(self, "over.clearance.who", "over.clearance.role", "over.clearance.day"),
                papers: ruling(self, "over.papers.who", "over.papers.role", "over.papers.day"),
                code: ruling(self, "over.code.who", "over.code.role", "over.code.day"),
            },
        }
    }
}
