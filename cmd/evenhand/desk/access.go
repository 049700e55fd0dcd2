package desk

// AccessBuckets are the parts of a bank's store that say who may come in at a desk: its people, invitations, passes and
// sessions. Going back to a backup of the bank leaves them as they stand, so that who was removed since stays out, and
// who signed out stays signed out.
var AccessBuckets = []string{peopleBucket, invitationBucket, tokenBucket, sessionBucket}
