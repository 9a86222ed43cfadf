//! Lengths as the trade writes them.
