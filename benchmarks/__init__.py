"""Measurements that take longer than a test."""
