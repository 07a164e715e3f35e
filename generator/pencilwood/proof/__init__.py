"""The proofs that every case must pass."""
