//! What was answered about the pool besides figures?

use crate::contract::{Fact, Field};
use crate::read::reader::Reader;
use plan::Ruling;
use plan::{
    Algae, Approval, BagSalt, Clarity, Electrical, Location, PoolUse, Ready, Rulings, Running, Sanitizer,
    Undissolved, Warranties, Warranty, Weather, YesNo,
};

/// Who has ruled otherwise, in which role, on which day?
const FINISH_AGE: [Field; 3] =
    [Field::ExceptionFinishAgeWho, Field::ExceptionFinishAgeRole, Field::ExceptionFinishAgeDay];
const CLEARANCE: [Field; 3] =
    [Field::ExceptionClearanceWho, Field::ExceptionClearanceRole, Field::ExceptionClearanceDay];
const WARRANTY: [Field; 3] =
    [Field::ExceptionWarrantyWho, Field::ExceptionWarrantyRole, Field::ExceptionWarrantyDay];
const CODE: [Field; 3] = [Field::ExceptionCodeWho, Field::ExceptionCodeRole, Field::ExceptionCodeDay];

impl Reader<'_> {
    /// What was answered about the pool, and said of it.
    pub fn ready(&mut self) -> Ready {
        let trace = |x: f64| Some(x);
        let ruling = |r: &mut Self, [who, role, day]: [Field; 3]| {
            let named = r.words(who) & r.words(role);
            Ruling { named, day: r.day(day) }
        };
        let word = self.choice(Field::SurfaceApproval, Approval::ALL);
        if matches!(word, Some(Approval::InHand | Approval::Refused)) {
            self.answer.say(Fact::ApprovalGiven);
        }
        let kind = self.choice(Field::PoolUse, PoolUse::ALL);
        if kind == Some(PoolUse::Public) {
            self.answer.say(Fact::UsePublic);
        }
        let word_day = self.day(Field::SurfaceApprovalDay).valid();
        let mut paper = |name| self.choice(name, Warranty::ALL);
        let papers = Warranties {
            liner: paper(Field::WarrantyLiner),
            heater: paper(Field::WarrantyHeater),
            cover: paper(Field::WarrantyCover),
            stone: paper(Field::WarrantyCoping),
            rails: paper(Field::WarrantyLadders),
        };
        Ready {
            finish: self.day(Field::SurfaceDay),
            word,
            word_named: self.words(Field::SurfaceApprovalBy),
            word_day,
            treated: self.choice(Field::WaterSanitizer, Sanitizer::ALL),
            papers,
            full: self.choice(Field::ReadyFull, YesNo::ALL),
            running: self.choice(Field::ReadyRunning, Running::ALL),
            clear: self.choice(Field::ReadyClarity, Clarity::ALL),
            algae: self.choice(Field::ReadyAlgae, Algae::ALL),
            swum: self.choice(Field::ReadySwimmers, YesNo::ALL),
            weather: self.choice(Field::ReadyWeather, Weather::ALL),
            wired: self.choice(Field::ReadyElectrical, Electrical::ALL),
            grade: self.choice(Field::BagSalt, BagSalt::ALL),
            kind,
            operator: self.choice(Field::PoolOperator, YesNo::ALL),
            place: self.choice(Field::PoolLocation, Location::ALL),
            grains: self.choice(Field::SaltUndissolved, Undissolved::ALL),
            moved: self.choice(Field::SaltSince, YesNo::ALL),
            combined: self.optional(Field::WaterCc, trace),
            copper: self.optional(Field::WaterCu, trace),
            iron: self.optional(Field::WaterFe, trace),
            rulings: Rulings {
                finish_age: ruling(self, FINISH_AGE),
                clearance: ruling(self, CLEARANCE),
                papers: ruling(self, WARRANTY),
                code: ruling(self, CODE),
            },
        }
    }
}
