//! What was typed, kept on this device: is it whole, and which is the newest?
//!
//! Each job has two slots, `a` and `b`. The older one is written, the newest whole one is read, so a write
//! that is cut anywhere leaves the one before. Which store that is, its caller knows.

use crate::text::joined;

/// A place for texts under keys, any call to which may fail.
pub trait Store {
    /// The text under a key.
    fn get(&self, key: &str) -> Option<String>;
    /// Puts a text there; false if that failed.
    fn set(&self, key: &str, text: &str) -> bool;
    /// Takes it away.
    fn remove(&self, key: &str);
    /// All keys.
    fn keys(&self) -> Vec<String>;
}

/// A job as it was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// Grows by one with each write.
    pub number: u64,
    /// When, in minutes.
    pub saved: u64,
    /// The form, as a link has it.
    pub form: String,
}

/// Why a job was not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotKept {
    /// The store fails, or is full.
    NoStore,
    /// Somebody else has written a newer one, which stays.
    Newer,
}

const BEGIN: &str = "saltwright.";
const IN_HAND: &str = "saltwright.job";
const SLOTS: [&str; 2] = [".a", ".b"];

fn key(job: &str, slot: &str) -> String {
    joined(&[BEGIN, job, slot])
}

/// Fowler, Noll and Vo's sum (FNV-1a, 64 bits): it shows a cut, not a forgery.
fn sum(text: &str) -> u64 {
    text.bytes()
        .fold(0xcbf2_9ce4_8422_2325, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

fn seal(kept: &Kept) -> String {
    let body = joined(&[&kept.number.to_string(), " ", &kept.saved.to_string(), " ", &kept.form]);
    joined(&[&sum(&body).to_string(), " ", &body])
}

fn open(text: &str) -> Option<Kept> {
    let (seal, body) = text.split_once(' ')?;
    let whole = seal.parse() == Ok(sum(body));
    let (number, rest) = body.split_once(' ').filter(|_| whole)?;
    let (saved, form) = rest.split_once(' ')?;
    Some(Kept { number: number.parse().ok()?, saved: saved.parse().ok()?, form: form.into() })
}

/// The newest whole one of a job's slots, and the slot that it is not in.
fn newest(store: &impl Store, job: &str) -> (Option<Kept>, &'static str) {
    let kept = |slot| store.get(&key(job, slot)).and_then(|text| open(&text));
    let (a, b) = (kept(SLOTS[0]), kept(SLOTS[1]));
    let number = |kept: &Option<Kept>| kept.as_ref().map(|kept| kept.number);
    if number(&a) >= number(&b) && a.is_some() { (a, SLOTS[1]) } else { (b, SLOTS[0]) }
}

/// A job as it was last kept whole.
pub fn read(store: &impl Store, job: &str) -> Option<Kept> {
    newest(store, job).0
}

/// Keeps a job, whose last known number is `known`; gives back its new number.
///
/// ```
/// use std::{cell::RefCell, collections::BTreeMap};
/// use saltwright_form::job_journal::{self, NotKept, Store};
/// #[derive(Default)]
/// struct Memory(RefCell<BTreeMap<String, String>>);
/// impl Store for Memory {
///     fn get(&self, key: &str) -> Option<String> { self.0.borrow().get(key).cloned() }
///     fn set(&self, key: &str, text: &str) -> bool {
///         self.0.borrow_mut().insert(key.into(), text.into());
///         true
///     }
///     fn remove(&self, key: &str) { self.0.borrow_mut().remove(key); }
///     fn keys(&self) -> Vec<String> { self.0.borrow().keys().cloned().collect() }
/// }
/// let store = Memory::default();
/// let first = job_journal::write(&store, "job", "pool.volume=50", 0, 0).unwrap();
/// assert_eq!(job_journal::write(&store, "job", "pool.volume=60", 1, first), Ok(first + 1));
/// assert_eq!(job_journal::write(&store, "job", "pool.volume=70", 2, first), Err(NotKept::Newer));
/// assert_eq!(job_journal::read(&store, "job").unwrap().form, "pool.volume=60");
/// ```
pub fn write(store: &impl Store, job: &str, form: &str, saved: u64, known: u64) -> Result<u64, NotKept> {
    let (there, slot) = newest(store, job);
    if there.as_ref().is_some_and(|there| there.number > known) {
        return Err(NotKept::Newer);
    }
    if there.as_ref().is_some_and(|there| there.form == form) {
        return Ok(known); // Nothing new.
    }
    // After the last number there is none: that was forged.
    let number = known.checked_add(1).ok_or(NotKept::NoStore)?;
    let kept = Kept { number, saved, form: form.into() };
    let (key, text) = (key(job, slot), seal(&kept));
    // What a store says it took is not always there.
    let took = store.set(&key, &text) && store.get(&key).as_ref() == Some(&text);
    if took { Ok(kept.number) } else { Err(NotKept::NoStore) }
}

/// Says which job is in hand, so that the next visit begins with it, be it blank.
pub fn take_up(store: &impl Store, job: &str) {
    store.set(IN_HAND, job);
}

/// The job in hand, or the one saved last.
pub fn in_hand(store: &impl Store) -> Option<String> {
    store.get(IN_HAND).or_else(|| jobs(store).into_iter().next().map(|(job, _)| job))
}

/// Takes a job away.
pub fn drop(store: &impl Store, job: &str) {
    SLOTS.iter().for_each(|slot| store.remove(&key(job, slot)));
}

/// Is this the key of one of the job's slots?
pub fn is_of(key: &str, job: &str) -> bool {
    SLOTS.iter().any(|slot| key == self::key(job, slot))
}

/// All jobs that can be read, the one saved last in front.
pub fn jobs(store: &impl Store) -> Vec<(String, Kept)> {
    let mut jobs: Vec<(String, Kept)> = Vec::new();
    for key in store.keys() {
        let job = key.strip_prefix(BEGIN).and_then(|key| key.split_once('.')).map_or("", |(job, _)| job);
        if job.is_empty() || jobs.iter().any(|(there, _)| there == job) {
            continue;
        }
        let Some(kept) = read(store, job) else { continue };
        let place = jobs.iter().take_while(|(_, there)| there.saved >= kept.saved).count();
        jobs.insert(place, (job.into(), kept));
    }
    jobs
}
