//! The command line: what can be asked, in words.

use clap::{Args, Parser, Subcommand};
use design::walk::Seed;
use std::path::PathBuf;

const CAUTION: &str = "Results support a competent person. Local codes and the authority having jurisdiction prevail; \
structural, mains-electrical and life-safety work is for whoever is licensed for it there.";

/// From one description of a gate site: every answer, drawing, list and paper.
#[derive(Debug, Parser)]
#[command(name = "gatewright", version, about, after_help = CAUTION)]
pub(crate) struct Arguments {
    /// Without a command, the workbench is served.
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
}

/// What can be asked.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Answer every question of the trade for a site, worst first.
    ///
    /// Exit status: 0 when all hold, 1 when something fails or is unknown, 2 when the site file has problems.
    Check {
        /// Site file, or the folder that holds `site.toml`.
        site: PathBuf,
        /// Show one finding with its working, by the name in the last column; or `all`.
        #[arg(long, value_name = "FINDING")]
        explain: Option<String>,
        /// Also list each question that this tool does not answer yet.
        #[arg(long)]
        questions: bool,
        /// Write findings and coverage as JSON.
        #[arg(long, conflicts_with_all = ["explain", "questions"])]
        json: bool,
    },
    /// Make the papers: findings, schedules and plan as PDF, XLSX, SVG and DXF.
    ///
    /// What gatewright walk has kept beside the site file is printed with what it rests on; where something of that has
    /// changed since, the papers say that it is out of date.
    Pack {
        /// Site file, or the folder that holds `site.toml`.
        site: PathBuf,
        /// Folder to write to; made if it does not exist.
        #[arg(short, long, value_name = "FOLDER")]
        output: PathBuf,
        /// Date that the papers carry; today when missing.
        #[arg(long, value_name = "YYYY-MM-DD")]
        date: Option<String>,
        /// Site file as it was last issued: what has changed since is clouded, marked and listed.
        #[arg(long, value_name = "OLD SITE")]
        since: Option<PathBuf>,
    },
    /// Work one calculation, forwards or backwards; without a name, list them all.
    ///
    /// Give each input as name=value with its unit. To solve backwards, write one input as name=? and give the result
    /// that is wanted.
    Calc {
        /// Name of the calculation.
        name: Option<String>,
        /// Inputs, such as `current="0.5 A"`.
        #[arg(value_name = "NAME=VALUE")]
        values: Vec<String>,
        /// Write the result as JSON.
        #[arg(long)]
        json: bool,
        /// Print in SI units instead of US customary ones.
        #[arg(long)]
        si: bool,
    },
    /// Hold the calculations against figures printed elsewhere; without a file, against those that come with the tool.
    Verify {
        /// Files of outside cases.
        #[arg(value_name = "FILE")]
        files: Vec<PathBuf>,
        /// List the cases that hold, too.
        #[arg(long)]
        all: bool,
    },
    /// Rank the entries of the parts files by how they would do on a site: what holds every finding first, the cheapest first.
    ///
    /// Each entry is tried in place of what is there, and every question is asked again. Exit status: 0 when an entry
    /// holds every finding that hangs on the choice, 1 when none does.
    Choose {
        /// What to choose: operator, wheels, hinges or post; anchors, with their pattern and depth; pad, the smallest that
        /// holds; protection, the fewest devices with which nobody is hit; conductors, the cheapest with which everything
        /// gets its voltage; routes, the cheapest ways that reach everything; cuts, what is sawn from which bar, and reels, which
        /// run comes off which reel, at the least cost; or mounting, for the pins of linear drives.
        what: String,
        /// Site file, or the folder that holds `site.toml`.
        site: PathBuf,
        /// Write the ranking as JSON.
        #[arg(long)]
        json: bool,
        /// Write what was found into the site file: of protection, the devices beside those that are there;
        /// of conductors, the entries of the cables that change.
        #[arg(long)]
        write: bool,
    },
    /// Walk people past each moving leaf of a site: whom it touches, how hard, and what can be proved.
    ///
    /// Exit status: 0 when nobody can be hit and that is proved, 1 when somebody is or something is open, 2 when the site
    /// file has problems.
    Walk(WalkArguments),
    /// Let vehicles come to each gate, day after day: how long they wait, how far back they stand, how often it opens.
    ///
    /// Exit status: 0 when no tail stands in the road for more than one twentieth of the worst hour, 1 when one does or
    /// something is unknown, 2 when the site file has problems.
    Queue(QueueArguments),
    /// Price each way to do the job in exact money: cost, the least price that covers it, and what the customer pays.
    ///
    /// With a folder, writes the margin sheet for the owner of the business and, where every price covers its cost, the
    /// offer for the customer, which shows no figure of the business. Exit status: 0 when everything has its price and
    /// every price covers its cost, 1 when one does not or something has no price, 2 when the site file has problems.
    Offer(OfferArguments),
    /// Put the tasks of a site into the order in which one pair of hands ends soonest, day by day.
    ///
    /// Each task waits for what it needs: cures, inspections, deliveries, light, and the weather of days that are forecast.
    /// Exit status: 0 when the plan meets every need, 1 when there is none or something is unknown, 2 when the site file has
    /// problems.
    Plan(PlanArguments),
    /// Open the workbench: design the sites of a folder in a browser on this computer, with every answer live.
    ///
    /// Each job is a folder with a `site.toml` in it; an editor may be open on the same files. Nothing can be reached from
    /// another computer.
    Serve {
        /// Folder that holds the folders of the jobs, or the folder of one job; a folder of its own, with sites to try, when
        /// missing.
        folder: Option<PathBuf>,
        /// Port to listen at; 7273, or a free one, when missing.
        #[arg(long)]
        port: Option<u16>,
    },
    /// Write one changed value back into a site file; comments and layout stay.
    Set {
        /// Site file, or the folder that holds `site.toml`.
        site: PathBuf,
        /// Path of the value, such as `device.reader-in.least_voltage`.
        path: String,
        /// The new value, such as `"11 V"`.
        value: String,
    },
    /// Write the generated pages: handbook, list of questions, JSON Schemas.
    Handbook {
        /// Folder to write to.
        #[arg(short, long, value_name = "FOLDER", default_value = "docs")]
        output: PathBuf,
    },
}

impl Default for Command {
    fn default() -> Self {
        Self::Serve {
            folder: None,
            port: None,
        }
    }
}

/// What can be asked of the walks.
#[derive(Debug, Args)]
pub(crate) struct WalkArguments {
    /// Site file, or the folder that holds `site.toml`.
    pub(crate) site: PathBuf,
    /// Only this gate.
    #[arg(long, value_name = "GATE")]
    pub(crate) gate: Option<String>,
    /// How many walks are worked.
    #[arg(long, value_name = "COUNT", default_value_t = 4_000_000)]
    pub(crate) walks: u64,
    /// Tell one walk, with what happens when: by its number, or spelled out as a proof came upon it.
    #[arg(long, value_name = "WALK")]
    pub(crate) seed: Option<Seed>,
    /// Write that walk as JSON for drawing: leaf and body each hundredth of a second.
    #[arg(long, requires = "seed")]
    pub(crate) trace: bool,
    /// Keep the result in `walk.json` beside the site file. `check` and the papers answer by it as long as nothing changes that it rests on.
    #[arg(long, conflicts_with = "seed")]
    pub(crate) keep: bool,
    /// Write the result as JSON.
    #[arg(long)]
    pub(crate) json: bool,
}

/// What can be asked of an offer.
#[derive(Debug, Args)]
pub(crate) struct OfferArguments {
    /// Site file, or the folder that holds `site.toml`.
    pub(crate) site: PathBuf,
    /// Folder to write to; made if it does not exist.
    #[arg(short, long, value_name = "FOLDER")]
    pub(crate) output: Option<PathBuf>,
    /// Date that the papers carry; today when missing.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) date: Option<String>,
    /// Write all figures as JSON.
    #[arg(long)]
    pub(crate) json: bool,
}

/// What can be asked of the queue.
#[derive(Debug, Args)]
pub(crate) struct QueueArguments {
    /// Site file, or the folder that holds `site.toml`.
    pub(crate) site: PathBuf,
    /// Only this lane.
    #[arg(long, value_name = "LANE")]
    pub(crate) lane: Option<String>,
    /// How many days are worked.
    #[arg(long, value_name = "COUNT", default_value_t = 20_000)]
    pub(crate) days: u64,
    /// Number from which chance is made; the same number makes the same days.
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    pub(crate) seed: u64,
    /// Write the result as JSON.
    #[arg(long)]
    pub(crate) json: bool,
}

/// What can be asked of the plan.
#[derive(Debug, Args)]
pub(crate) struct PlanArguments {
    /// Site file, or the folder that holds `site.toml`.
    pub(crate) site: PathBuf,
    /// First day of the work; that of the site when missing.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) from: Option<String>,
    /// A day that was lost; may be given again.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) lost: Vec<String>,
    /// Folder to write the plan with its bar chart and the sheets of the days to; made if it does not exist.
    #[arg(short, long, value_name = "FOLDER")]
    pub(crate) output: Option<PathBuf>,
    /// Date that the papers carry; today when missing.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) date: Option<String>,
    /// Write the plan as JSON.
    #[arg(long)]
    pub(crate) json: bool,
}
