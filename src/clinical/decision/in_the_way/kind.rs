//! One thing in the way, with what a rule said of it as a flag.

use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::in_the_way::Obstacle;

/// One thing in the way.
pub type InTheWay = Obstacle<Flag>;
