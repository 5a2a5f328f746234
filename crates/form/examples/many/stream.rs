//! How does a list of any length go through all cores in the same small memory, and come out in its order?
//!
//! One thread reads, in chunks; chunk by chunk each worker has its turn, and the writer asks them in the same turn. The
//! channels hold little, so whoever is ahead waits.

use crate::results::{As, Results};
use csv::ByteRecord;
use saltwright_form::contract::FieldId;
use saltwright_form::{Form, answer};
use std::fmt::Write as _;
use std::io::{self, Read, Write};
use std::num::NonZero;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::thread;

/// Pools in one chunk.
const CHUNK: usize = 256;
/// Chunks that may wait for a worker, and answers to them that may wait for the writer.
const WAITING: usize = 4;

/// Pools that follow one another; the number of the first, by the rows of a spreadsheet.
struct Chunk {
    first: u64,
    rows: Vec<ByteRecord>,
}

/// What is to be written for a chunk: plans, and what is at fault.
#[derive(Default)]
struct Written {
    plans: Vec<u8>,
    faults: String,
}

/// Reads pools and writes their plans; is every row all right?
pub fn plans(
    pools: impl Read + Send,
    form: As,
    results: &Results,
    out: &mut impl Write,
    err: &mut impl Write,
) -> io::Result<bool> {
    let mut pools = csv::ReaderBuilder::new().flexible(true).from_reader(pools);
    let columns = columns(pools.headers()?.iter(), err)?;
    if form == As::Csv {
        let mut head = csv::Writer::from_writer(&mut *out);
        results.head(&mut head)?;
        head.flush()?;
    }
    let workers = thread::available_parallelism().map_or(1, NonZero::get);
    thread::scope(|scope| {
        let (mut to, mut from) = (Vec::new(), Vec::new());
        for _ in 0..workers {
            let (give, chunks) = sync_channel::<Chunk>(WAITING);
            let (written, take) = sync_channel(WAITING);
            let columns = &columns;
            scope.spawn(move || work(chunks, columns, form, results, written));
            to.push(give);
            from.push(take);
        }
        let reading = scope.spawn(move || read(pools, &to));
        let mut all_well = true;
        // The first worker whose turn brings nothing had the last chunk's successor: there is none.
        for written in from.iter().cycle().map_while(|worker| worker.recv().ok()) {
            let written = written?;
            out.write_all(&written.plans)?;
            err.write_all(written.faults.as_bytes())?;
            all_well &= written.faults.is_empty();
        }
        drop(from);
        reading.join().map_err(|_| io::Error::other("reading broke off"))??;
        Ok(all_well)
    })
}

/// The names of the columns; tells of those that the contract does not know.
fn columns<'a>(head: impl Iterator<Item = &'a str>, err: &mut impl Write) -> io::Result<Vec<String>> {
    let columns: Vec<String> = head.map(|name| name.trim().to_string()).collect();
    for name in columns.iter().filter(|name| FieldId::find(name).is_none()) {
        writeln!(err, "column {name}: no field of that name; it counts for nothing")?;
    }
    Ok(columns)
}

/// Gives each worker its chunks in turn, until there is no row more or nobody who takes them.
fn read(mut pools: csv::Reader<impl Read>, to: &[SyncSender<Chunk>]) -> io::Result<()> {
    let mut first = 2;
    let mut rows = pools.byte_records();
    for worker in to.iter().cycle() {
        let chunk = rows.by_ref().take(CHUNK).collect::<Result<Vec<_>, _>>()?;
        let count = chunk.len();
        if count == 0 || worker.send(Chunk { first, rows: chunk }).is_err() {
            break;
        }
        first += count as u64;
    }
    Ok(())
}

fn work(
    chunks: Receiver<Chunk>,
    columns: &[String],
    form: As,
    results: &Results,
    to: SyncSender<io::Result<Written>>,
) {
    for chunk in chunks {
        if to.send(write(&chunk, columns, form, results)).is_err() {
            break;
        }
    }
}

fn write(chunk: &Chunk, columns: &[String], form: As, results: &Results) -> io::Result<Written> {
    let mut written = Written::default();
    let mut table = csv::Writer::from_writer(Vec::new());
    for (row, cells) in (chunk.first..).zip(&chunk.rows) {
        let pool = match pool(columns, cells) {
            Ok(pool) => pool,
            Err(wrong) => {
                let _ = writeln!(written.faults, "row {row}: {wrong}");
                continue;
            }
        };
        let answer = answer(&pool);
        for fault in &answer.faults {
            let (field, code) = (fault.field.name(), fault.code.name());
            let _ = writeln!(written.faults, "row {row}: {field}: {code}, where {:?} is typed", fault.got);
        }
        match form {
            As::Csv => results.cells(row, &answer, &mut table)?,
            As::Json => results.object(row, &answer, &mut written.plans)?,
        }
    }
    written.plans.append(&mut table.into_inner().map_err(io::Error::other)?);
    Ok(written)
}

/// The form that a row fills; or what is wrong with the row.
fn pool(columns: &[String], cells: &ByteRecord) -> Result<Form, String> {
    if cells.len() != columns.len() {
        return Err(format!("{} cells, where the first row has {}", cells.len(), columns.len()));
    }
    let mut form = Form::default();
    for (name, cell) in columns.iter().zip(cells) {
        let text = std::str::from_utf8(cell).map_err(|_| format!("{name}: not UTF-8"))?;
        if !text.is_empty() {
            form.0.push((name.clone(), text.into()));
        }
    }
    Ok(form)
}
